/** A place beside the database that remembers a short word; it may be missing, full or forbidden. */
export type Keepsake = {
  read: (name: string) => string | null;
  write: (name: string, value: string) => void;
};

/** A wire between the tabs of one browser. */
export type Channel = {
  post: (message: unknown) => void;
  listen: (hear: (message: unknown) => void) => void;
  close: () => void;
};

/** The part of `navigator.locks` that is used. */
export type Locks = {
  request: <T>(
    name: string,
    options: { ifAvailable?: boolean; steal?: boolean },
    work: (lock: unknown) => Promise<T>,
  ) => Promise<T>;
};

export type PageEvent = 'visible' | 'hidden' | 'online';

/** The part of an `EventSource` that is used. */
export type EventStream = {
  addEventListener: (type: string, hear: (event: { data?: unknown }) => void) => void;
  close: () => void;
};

/** All that the outbox knows of the world around it. What a browser does not have is null. */
export type Environment = {
  indexedDB: IDBFactory;
  fetch: (url: string, init: RequestInit) => Promise<Response>;
  /** The device's clock, ms since 1970, right or wrong. */
  nowMs: () => number;
  /** Minutes that local time is ahead of UTC at a moment. */
  offsetMin: (atMs: number) => number;
  /** In [0, 1). */
  random: () => number;
  newId: () => string;
  /** Runs something later; the answer calls it off. */
  after: (delayMs: number, run: () => void) => () => void;
  locks: Locks | null;
  channel: Channel | null;
  keepsakes: readonly Keepsake[];
  onPage: (hear: (event: PageEvent) => void) => () => void;
  openStream: (url: string) => EventStream;
  /** Asks the browser not to clear this store by itself; the answer changes nothing here. */
  persist: () => void;
};
