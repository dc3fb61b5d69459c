import { skewTellsMs } from './clock-skew';
import type { Entry } from './entry';
import { emptySnapshot, type Snapshot } from './snapshot';

/** So many entries that got into the book stay on the board, for sheets that have not heard of them. */
const freshCountMax = 1000;

export type NoticeBoard = {
  subscribe: (listener: () => void) => () => void;
  snapshot: () => Snapshot;
  /** Takes rows as they now are; an older copy of a row that is on the board already changes nothing. */
  merge: (entries: readonly Entry[]) => void;
  /** Ids of the rows that are unsent or in the tray as far as the board knows. */
  waitingIds: () => string[];
  set: (facts: Partial<Omit<Snapshot, 'unsent' | 'tray' | 'byJob' | 'clockOff'>>) => void;
};

/** The outbox as screens see it: rows merged from this tab and others, handed out as one stable snapshot. */
export function createNoticeBoard(): NoticeBoard {
  const rows = new Map<string, Entry>();
  const listeners = new Set<() => void>();
  let current = emptySnapshot;

  const publish = (next: Snapshot) => {
    current = next;
    for (const listener of listeners) {
      try {
        listener();
      } catch (error) {
        // A screen that fails must not make a kept entry look lost; it is reported as a fault of its own.
        void Promise.reject(error);
      }
    }
  };

  return {
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    snapshot: () => current,
    waitingIds: () =>
      [...rows.values()]
        .filter(({ state }) => state === 'on this device' || state === 'needs a look')
        .map(({ id }) => id),
    merge(entries) {
      const newer = entries.filter((entry) => (rows.get(entry.id)?.revision ?? 0) < entry.revision);
      if (newer.length === 0) return;
      for (const entry of newer) {
        // Taken out first, so that the map runs in the order of the last change.
        rows.delete(entry.id);
        rows.set(entry.id, entry);
      }
      forgetOldest(rows);
      const touched = new Set(newer.map(({ jobId }) => jobId));
      publish({ ...current, ...countsOf(rows, current, touched) });
    },
    set(facts) {
      const keys = Object.keys(facts) as (keyof typeof facts)[];
      if (keys.every((key) => facts[key] === current[key])) return;
      const next = { ...current, ...facts };
      publish({ ...next, clockOff: Math.abs(next.skewMs ?? 0) > skewTellsMs });
    },
  };
}

function forgetOldest(rows: Map<string, Entry>): void {
  const fresh = [...rows.values()].filter(({ state }) => state === 'in the book');
  for (const { id } of fresh.slice(0, -freshCountMax)) rows.delete(id);
}

function countsOf(
  rows: ReadonlyMap<string, Entry>,
  before: Snapshot,
  touched: ReadonlySet<string>,
): Pick<Snapshot, 'unsent' | 'tray' | 'byJob'> {
  const inOrder = [...rows.values()]
    .filter(({ state }) => state !== 'set aside')
    .sort((a, b) => a.deviceSeq - b.deviceSeq);
  const tray = inOrder.filter(({ state }) => state === 'needs a look');
  const byJob = new Map<string, readonly Entry[]>(before.byJob);
  for (const jobId of touched) {
    const ofJob = inOrder.filter((entry) => entry.jobId === jobId);
    if (ofJob.length > 0) byJob.set(jobId, ofJob);
    else byJob.delete(jobId);
  }
  const sameTray =
    tray.length === before.tray.length && tray.every((entry, i) => entry === before.tray[i]);
  return {
    unsent: inOrder.filter(({ state }) => state === 'on this device').length,
    tray: sameTray ? before.tray : tray,
    byJob,
  };
}
