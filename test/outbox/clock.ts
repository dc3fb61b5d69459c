export type Clock = {
  nowMs: () => number;
  after: (delayMs: number, run: () => void) => () => void;
  /** Moves on and runs what has come due, in order. */
  advance: (ms: number) => void;
  /** Delays of the timers that wait, ms from now. */
  waiting: () => number[];
};

/** A clock that moves only when told to. */
export function createClock(startMs: number): Clock {
  let nowMs = startMs;
  let timers: { atMs: number; run: () => void }[] = [];
  return {
    nowMs: () => nowMs,
    after(delayMs, run) {
      const timer = { atMs: nowMs + delayMs, run };
      timers.push(timer);
      return () => {
        timers = timers.filter((other) => other !== timer);
      };
    },
    advance(ms) {
      const untilMs = nowMs + ms;
      for (;;) {
        const due = timers.filter(({ atMs }) => atMs <= untilMs).sort((a, b) => a.atMs - b.atMs)[0];
        if (due === undefined) break;
        timers = timers.filter((other) => other !== due);
        nowMs = Math.max(nowMs, due.atMs);
        due.run();
      }
      nowMs = untilMs;
    },
    waiting: () => timers.map(({ atMs }) => atMs - nowMs).sort((a, b) => a - b),
  };
}
