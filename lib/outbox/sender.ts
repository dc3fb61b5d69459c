import { backOffMs } from './back-off';
import type { Box, Judged } from './box';
import type { Entry } from './entry';
import type { Environment } from './environment';
import type { Lease } from './lease';
import { postBatch } from './post-batch';
import type { TroubleCode } from './trouble';

/** What may set it going. `rested` is its own. */
export type Wake = 'start' | 'visible' | 'online' | 'entry' | 'person' | 'timer';

export type Sender = {
  wake: (why: Wake) => void;
  stop: () => void;
};

type Parts = {
  env: Environment;
  box: Box;
  lease: Lease;
  onChanged: (entries: Entry[]) => void;
  onTrouble: (code: TroubleCode | null) => void;
  onSkew: (skewMs: number) => void;
};

/** The most entries of one request; the same as `batchMax` of the schema, which would bring zod with it. */
export const batchCountMax = 100;
const answerWithinMs = 15_000;
const everyMs = 20_000;
const elsewhereMs = 2000;
const hurryMs = 1000;
const longestRestMs = 60_000;
const sweepEveryMs = 3_600_000;

/**
 * Brings what is on this device into the book, and never gives up.
 *
 * Entries go in the order of their running numbers, up to a hundred of one kind in a request, one sender at a
 * time over all tabs. An entry leaves the queue only when an answer names it: kept or known, it is in the book;
 * refused, it needs a look. A request refused as a whole is halved until the culprit is alone. Everything else
 * (no network, no answer, 5xx, 429, sign-in, an answer of no known shape) is tried again after a rest that grows
 * to a minute.
 *
 * What the server has answered but the device could not note is remembered while the page is open and noted
 * later, and not sent again until then.
 */
export function createSender(parts: Parts): Sender {
  const { env, box, lease } = parts;
  /** Answered by the server, not noted on the disk yet. */
  const owed = new Map<string, Judged>();
  let running = false;
  let again = false;
  let stopped = false;
  let failures = 0;
  let rest: { callOff: () => void; asked: boolean; hurried: boolean } | null = null;
  let skewMs: number | null = null;
  /** The server's time as the last answer gave it. */
  let serverMs: number | null = null;
  let sweptMs: number | null = null;

  function wake(why: Wake): void {
    if (stopped) return;
    if (running) {
      again ||= why !== 'timer';
      return;
    }
    if (rest !== null) {
      if (why === 'timer' || (rest.asked && why !== 'person')) return;
      if (why === 'entry') {
        if (!rest.hurried) restFor(hurryMs, { hurried: true });
        return;
      }
      endRest();
    }
    void pass();
  }

  function restFor(delayMs: number, { asked = false, hurried = false } = {}): void {
    endRest();
    const callOff = env.after(delayMs, () => {
      rest = null;
      void pass();
    });
    rest = { callOff, asked, hurried };
  }

  function endRest(): void {
    rest?.callOff();
    rest = null;
  }

  async function pass(): Promise<void> {
    running = true;
    again = false;
    const result = await sendAll().catch((): Result => ({ kind: 'storage' }));
    running = false;
    if (stopped) return;
    if (result.kind === 'done') {
      failures = 0;
      parts.onTrouble(null);
      void sweep();
    } else if (result.kind === 'elsewhere') {
      restFor(elsewhereMs);
    } else {
      failures += 1;
      const waitMs = result.kind === 'trouble' ? result.waitMs : null;
      if (result.kind === 'trouble') parts.onTrouble(result.code);
      const restMs = Math.max(backOffMs(failures, env.random), waitMs ?? 0);
      const asked = waitMs !== null || (result.kind === 'trouble' && result.code === 'outbox/busy');
      restFor(Math.min(restMs, longestRestMs), { asked });
    }
    if (again) wake('entry');
  }

  async function sendAll(): Promise<Result> {
    const passedOver = new Set<string>();
    let countMax = batchCountMax;
    if ((await box.unsent(1, passedOver)).length === 0) return { kind: 'done' };
    // oxlint-disable-next-line no-unmodified-loop-condition -- stop() does, between two requests
    while (!stopped) {
      const step = await lease(() => sendBatch(countMax, passedOver));
      if (step === null) return { kind: 'elsewhere' };
      if (step.kind === 'trouble') return step;
      if (step.kind === 'nothing left') break;
      if (step.kind === 'halve') countMax = Math.ceil(step.count / 2);
      else {
        if (step.noted) failures = 0;
        countMax = Math.min(countMax * 2, batchCountMax);
      }
    }
    if (owed.size > 0) return { kind: 'trouble', code: 'outbox/bookkeeping', waitMs: null };
    if (passedOver.size > 0) {
      return { kind: 'trouble', code: 'outbox/not-understood', waitMs: null };
    }
    return { kind: 'done' };
  }

  async function sendBatch(countMax: number, passedOver: Set<string>): Promise<Step> {
    await note([...owed.values()]);
    const queue = await box.unsent(countMax, new Set([...passedOver, ...owed.keys()]));
    const [first] = queue;
    if (first === undefined) return { kind: 'nothing left' };
    const end = queue.findIndex(({ kind }) => kind !== first.kind);
    const batch: [Entry, ...Entry[]] = [first, ...queue.slice(1, end === -1 ? undefined : end)];
    const answer = await postBatch(env, batch, answerWithinMs);
    if (answer.kind === 'trouble') return answer;
    if (answer.skewMs !== null) {
      skewMs = answer.skewMs;
      serverMs = env.nowMs() - skewMs;
      parts.onSkew(skewMs);
    }
    if (answer.kind === 'refused') {
      if (batch.length > 1) return { kind: 'halve', count: batch.length };
      const outcome = { ...answer.refusal, id: first.id, state: 'refused' as const };
      return { kind: 'went', noted: await note([{ id: first.id, outcome }]) };
    }
    for (const { id } of batch) if (!answer.outcomes.has(id)) passedOver.add(id);
    const judged = [...answer.outcomes].map(([id, outcome]) => ({ id, outcome }));
    return { kind: 'went', noted: await note(judged) };
  }

  /** Writes down what became of entries. What cannot be written is owed, and never sent again for that. */
  async function note(judged: readonly Judged[]): Promise<boolean> {
    if (judged.length === 0) return false;
    for (const one of judged) owed.set(one.id, one);
    let changed: Entry[];
    try {
      changed = await box.settle(judged, skewMs);
    } catch {
      return false;
    }
    for (const { id } of judged) owed.delete(id);
    parts.onChanged(changed);
    return true;
  }

  /** Clears second copies that have stood long enough by the server's clock, just after it was heard. */
  async function sweep(): Promise<void> {
    if (serverMs === null) return;
    if (sweptMs !== null && Math.abs(serverMs - sweptMs) < sweepEveryMs) return;
    sweptMs = serverMs;
    await box.sweep(serverMs).catch(() => 0);
  }

  let callOffTick: (() => void) | undefined;
  const tick = () => {
    callOffTick = env.after(everyMs, () => {
      wake('timer');
      tick();
    });
  };
  tick();

  return {
    wake,
    stop() {
      stopped = true;
      endRest();
      callOffTick?.();
    },
  };
}

type Trouble = { kind: 'trouble'; code: TroubleCode; waitMs: number | null };
/** `storage`: the disk could not be read; the connection has told of it itself. */
type Result = Trouble | { kind: 'done' } | { kind: 'elsewhere' } | { kind: 'storage' };
type Step =
  | Trouble
  | { kind: 'nothing left' }
  | { kind: 'went'; noted: boolean }
  | { kind: 'halve'; count: number };
