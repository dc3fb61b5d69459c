import type { Entry } from './entry';
import type { TroubleCode } from './trouble';

/** What screens show of the outbox. A new object only when something in it has changed. */
export type Snapshot = {
  /** False until the box has been looked into once. */
  ready: boolean;
  /** How many entries are on this device only; those that need a look are not counted here. */
  unsent: number;
  /** What the server refused, until a person has settled it. */
  tray: readonly Entry[];
  /**
   * By job, in the order of their running numbers: entries not in the book, and those that got there since
   * this page was opened, so that a sheet that has not heard of them yet can still show them.
   */
  byJob: ReadonlyMap<string, readonly Entry[]>;
  lastKeptAtMs: number | null;
  /** Device clock less server clock, ms. */
  skewMs: number | null;
  /** The two are more than two minutes apart. */
  clockOff: boolean;
  trouble: TroubleCode | null;
};

/** Before anything is known, and on the server. */
export const emptySnapshot: Snapshot = {
  ready: false,
  unsent: 0,
  tray: [],
  byJob: new Map(),
  lastKeptAtMs: null,
  skewMs: null,
  clockOff: false,
  trouble: null,
};

const none: readonly Entry[] = [];

/** The entries of one job that its sheet may lack; the same array until one of them changes. */
export function entriesFor(snapshot: Snapshot, jobId: string): readonly Entry[] {
  return snapshot.byJob.get(jobId) ?? none;
}
