import { createBox } from './box';
import { createConnection } from './connection';
import { deviceId } from './device-id';
import type { Draft, Entry } from './entry';
import type { Environment } from './environment';
import { findLost } from './find-lost';
import { createLease } from './lease';
import { createNoticeBoard } from './notice-board';
import { createSender } from './sender';
import type { Snapshot } from './snapshot';
import type { TroubleCode } from './trouble';

export type Outbox = {
  /**
   * Keeps one entry on this device. Resolves only when the disk has it; from then on it will be sent until the
   * server has named it. An id that is kept already is not kept twice.
   * @throws {OutboxError} with the draft, and its id, for the caller to show and to keep again
   */
  keep: (draft: Draft) => Promise<Entry>;
  subscribe: (listener: () => void) => () => void;
  /** The same object until something changes. */
  snapshot: () => Snapshot;
  /** Sends an entry that needs a look, or was set aside, once more as it is. */
  resend: (id: string) => Promise<void>;
  /** Puts an entry that needs a look away, with a reason. It stays on this device for good. */
  setAside: (id: string, reason: string) => Promise<void>;
  /** A person does not want to wait for the next attempt. */
  sendNow: () => void;
  /** Sends second copies again, by their running numbers, where the server says it lacks them. */
  sendAgain: (deviceSeqs: readonly number[]) => Promise<void>;
  /** All that this device holds, of one job or of all, in the order of the running numbers. */
  copies: (jobId?: string) => Promise<Entry[]>;
  /** Puts this device's second copies of a job on show, for a sheet that was kept before they got into the book. */
  recall: (jobId: string) => Promise<void>;
  deviceId: () => Promise<string>;
  stop: () => void;
};

/** How often a box that could not be read, or that other tabs cannot report on, is looked into. */
const lookEveryMs = 20_000;
/** The first comparison with the book waits until the page has settled; later ones are not more often than this. */
const compareAfterMs = 5000;
const compareEveryMs = 10 * 60_000;

/** The outbox of one tab: box, sender and what screens see of them, wired together and started. */
export function createOutbox(env: Environment): Outbox {
  const board = createNoticeBoard();
  const troubles: { storage: TroubleCode | null; sending: TroubleCode | null } = {
    storage: null,
    sending: null,
  };
  const tell = (where: keyof typeof troubles) => (code: TroubleCode | null) => {
    troubles[where] = code;
    board.set({ trouble: troubles.storage ?? troubles.sending });
  };
  const connection = createConnection(env, { onTrouble: tell('storage') });
  const box = createBox(env, connection);
  const sender = createSender({
    env,
    box,
    lease: createLease(env, connection),
    onChanged: share,
    onTrouble: tell('sending'),
    onSkew: (skewMs) => board.set({ skewMs }),
  });
  let stopped = false;
  let asked = false;
  let comparedMs: number | null = null;
  let comparing = false;

  function share(entries: Entry[]): void {
    board.merge(entries);
    const { lastKeptAtMs, skewMs } = board.snapshot();
    try {
      env.channel?.post({ entries, lastKeptAtMs, skewMs } satisfies News);
    } catch {
      // Other tabs look for themselves when they are next seen.
    }
  }

  async function look(): Promise<void> {
    // What was waiting and is no longer has been settled by another tab.
    const { entries, lastKeptAtMs, skewMs } = await box.look(board.waitingIds());
    board.merge(entries);
    board.set({ ready: true, lastKeptAtMs, skewMs: board.snapshot().skewMs ?? skewMs });
  }
  // A box that cannot be read has been told of by the connection; the next look is never far.
  const tryLook = () => void look().catch(() => undefined);

  /** Asks the server what it has of this device, now and then, and sends again what it lacks. */
  async function compare(): Promise<void> {
    const nowMs = env.nowMs();
    if (comparing || (comparedMs !== null && Math.abs(nowMs - comparedMs) < compareEveryMs)) return;
    comparing = true;
    try {
      const lost = await findLost(env, await box.copies());
      if (lost === null || stopped) return;
      comparedMs = nowMs;
      if (lost.length === 0) return;
      share(await box.sendAgain(lost));
      sender.wake('entry');
    } catch {
      // A box that cannot be read has been told of by the connection; the next time is never far.
    } finally {
      comparing = false;
    }
  }

  env.channel?.listen((message) => {
    if (!isNews(message)) return;
    board.merge(message.entries);
    const { lastKeptAtMs, skewMs } = board.snapshot();
    board.set({
      lastKeptAtMs: message.lastKeptAtMs ?? lastKeptAtMs,
      skewMs: message.skewMs ?? skewMs,
    });
  });
  const callOffPage = env.onPage((event) => {
    if (event === 'hidden') return;
    tryLook();
    sender.wake(event);
    void compare();
  });
  let callOffTick: (() => void) | undefined;
  const tick = () => {
    callOffTick = env.after(lookEveryMs, () => {
      if (env.channel === null || !board.snapshot().ready) tryLook();
      void compare();
      tick();
    });
  };

  tick();
  tryLook();
  sender.wake('start');
  const callOffCompare = env.after(compareAfterMs, () => void compare());

  return {
    async keep(draft) {
      const entry = await box.keep(draft);
      board.set({ lastKeptAtMs: entry.keptAtMs });
      share([entry]);
      sender.wake('entry');
      if (!asked) env.persist();
      asked = true;
      return entry;
    },
    subscribe: board.subscribe,
    snapshot: board.snapshot,
    async resend(id) {
      share([await box.resend(id)]);
      sender.wake('person');
    },
    async setAside(id, reason) {
      share([await box.setAside(id, reason)]);
    },
    sendNow: () => sender.wake('person'),
    async sendAgain(deviceSeqs) {
      share(await box.sendAgain(deviceSeqs));
      sender.wake('person');
    },
    copies: box.copies,
    async recall(jobId) {
      board.merge(await box.copies(jobId));
    },
    deviceId: () => deviceId(env, connection),
    stop() {
      if (stopped) return;
      stopped = true;
      sender.stop();
      callOffPage();
      callOffTick?.();
      callOffCompare();
      env.channel?.close();
      connection.close();
    },
  };
}

type News = { entries: Entry[]; lastKeptAtMs: number | null; skewMs: number | null };

function isNews(message: unknown): message is News {
  return typeof message === 'object' && message !== null && 'entries' in message;
}
