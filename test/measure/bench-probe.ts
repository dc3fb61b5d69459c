/** What one entry took, ms from the Enter key's own time. */
export type Taken = {
  /** To the end of the frame in which the reading stands. */
  paintedMs: number;
  /** To `complete` of the strict transaction that keeps it. */
  keptMs: number;
  /** As the browser's Event Timing tells it, to the picture on the screen, in steps of 8; null below 16. */
  toldMs: number | null;
};

declare global {
  interface Window {
    probe: {
      /** Watches for the next Enter, for this text to stand as the reading and to be kept. */
      watch: (text: string) => void;
      /** What was watched for, once it has come. */
      taken: () => Promise<Omit<Taken, 'toldMs'> & { atMs: number }>;
      /** Of the Enter that came at a time. */
      told: (atMs: number) => number | null;
      /** When a text that comes from elsewhere stands painted as the reading, ms since 1970. */
      shown: (text: string) => Promise<number>;
      /** When the entry could first take a key, ms since the page was asked for; null until then. */
      readyMs: number | null;
    };
  }
}

/**
 * Put into a page before its own script: watches keys, the reading and the disk, and changes nothing.
 *
 * A reading is painted when a task runs that was posted in the animation frame after the reading came into
 * the document: the frame's style, layout and paint lie between the two, so the time holds all that the page's
 * own thread does for it. What the compositor needs after that is not in it, and is told beside it by the
 * browser's Event Timing, which is only to 8 ms. Two animation frames in a row would add a whole frame that
 * nobody waits for.
 */
export function installProbe(): void {
  let enterMs: number | null = null;
  const told = new Map<number, number>();
  let both: Promise<[paintedAtMs: number, keptAtMs: number]>;
  let wanted = '';
  let kept: (atMs: number) => void = () => {};

  addEventListener(
    'keydown',
    (event) => {
      if (event.key === 'Enter') enterMs = event.timeStamp;
    },
    { capture: true },
  );
  new PerformanceObserver((list) => {
    for (const { name, startTime, duration } of list.getEntries()) {
      if (name === 'keydown') told.set(Math.round(startTime * 10), duration);
    }
  }).observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);

  const put = IDBObjectStore.prototype.put;
  IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
    const value = given[0] as { state?: string; row?: { text?: string } };
    const isIt = value?.state === 'on this device' && value.row?.text === wanted;
    if (isIt && this.transaction.durability === 'strict') {
      this.transaction.addEventListener('complete', () => kept(performance.now()));
    }
    return put.apply(this, given);
  };

  const painted = (shown: string) =>
    new Promise<number>((done) => {
      const section = document.querySelector('section[aria-label="Reading"]')!;
      const isThere = () => section.querySelector('[data-state] > span')?.textContent === shown;
      if (isThere()) throw new Error(`${shown} stands there already`);
      const observer = new MutationObserver(() => {
        if (!isThere()) return;
        observer.disconnect();
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.addEventListener('message', () => done(performance.now()));
          port1.start();
          port2.postMessage(null);
        });
      });
      observer.observe(section, { subtree: true, childList: true, characterData: true });
    });

  window.probe = {
    watch(text) {
      enterMs = null;
      wanted = text;
      const keptAt = new Promise<number>((done) => {
        kept = done;
      });
      both = Promise.all([painted(text), keptAt]);
    },
    async taken() {
      const [paintedAtMs, keptAtMs] = await both;
      const atMs = enterMs!;
      return { atMs, paintedMs: paintedAtMs - atMs, keptMs: keptAtMs - atMs };
    },
    told: (atMs) => told.get(Math.round(atMs * 10)) ?? null,
    shown: async (text) => performance.timeOrigin + (await painted(text)),
    readyMs: null,
  };
  document.addEventListener('focusin', (event) => {
    if ((event.target as Element).getAttribute('name') === 'reading') {
      window.probe.readyMs ??= performance.now();
    }
  });
}
