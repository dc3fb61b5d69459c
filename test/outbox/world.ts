import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import type { Draft, Entry } from '@/lib/outbox/entry';
import type {
  Environment,
  EventStream,
  Keepsake,
  Locks,
  PageEvent,
} from '@/lib/outbox/environment';
import { createIds } from '@/lib/outbox/ids';
import { createOutbox, type Outbox } from '@/lib/outbox/outbox';
import { createBook, type Book } from './book';
import { createClock, type Clock } from './clock';

/** One device with its disk and its tabs, a server, and a clock that stands still until it is told. */
export type World = {
  clock: Clock;
  book: Book;
  keepsakes: (Keepsake & { words: Map<string, string> })[];
  /** How far this device's clock is ahead of the server's, ms. */
  skewMs: number;
  /** As if the browser had thrown the database away. */
  loseDatabase: () => void;
  environment: (without?: { locks?: true; channel?: true }) => TabEnvironment;
  tab: (without?: { locks?: true; channel?: true }) => Tab;
};

export type TabEnvironment = Environment & {
  page: (event: PageEvent) => void;
  streams: FakeStream[];
  asked: { persist: number };
};
/** `kill` ends a tab as a killed browser does: no answer that is under way reaches it. */
export type Tab = Outbox & { env: TabEnvironment; kill: () => void };

export const startMs = Date.UTC(2026, 10, 25, 9, 0, 0);

export function createWorld(): World {
  const clock = createClock(startMs);
  const book = createBook(clock);
  const locks = createLocks();
  const wires = new Set<(message: unknown) => void>();
  const words = [new Map<string, string>(), new Map<string, string>()];
  let factory = new IDBFactory();
  let seed = 1;
  const chance = () => (seed = (seed * 48_271) % 2_147_483_647) / 2_147_483_647;

  const world: World = {
    clock,
    book,
    skewMs: 0,
    keepsakes: words.map((map) => ({
      words: map,
      read: (name) => map.get(name) ?? null,
      write: (name, value) => void map.set(name, value),
    })),
    loseDatabase() {
      factory = new IDBFactory();
    },
    environment(without = {}) {
      const pages = new Set<(event: PageEvent) => void>();
      const streams: FakeStream[] = [];
      const asked = { persist: 0 };
      const nowMs = () => clock.nowMs() + world.skewMs;
      const newId = createIds({
        nowMs,
        randomise: (bytes) => bytes.forEach((_, i) => (bytes[i] = chance() * 256)),
      });
      let hear: ((message: unknown) => void) | null = null;
      return {
        indexedDB: factory,
        fetch: (url, init) => book.fetch(url, init),
        nowMs,
        offsetMin: () => 60,
        random: chance,
        newId,
        after: clock.after,
        locks: without.locks ? null : locks,
        channel: without.channel
          ? null
          : {
              post(message) {
                const copy: unknown = structuredClone(message);
                for (const wire of wires) if (wire !== hear) setImmediate(() => wire(copy));
              },
              listen(listener) {
                hear = listener;
                wires.add(listener);
              },
              close: () => void (hear && wires.delete(hear)),
            },
        keepsakes: world.keepsakes,
        onPage(listener) {
          pages.add(listener);
          return () => pages.delete(listener);
        },
        openStream(url) {
          const stream = createStream(url);
          streams.push(stream);
          return stream;
        },
        persist: () => void (asked.persist += 1),
        page: (event) => pages.forEach((listener) => listener(event)),
        streams,
        asked,
      };
    },
    tab(without) {
      const env = world.environment(without);
      let dead = false;
      const { fetch, after } = env;
      env.fetch = async (url, init) => {
        const response = await fetch(url, init);
        return dead ? new Promise<Response>(() => undefined) : response;
      };
      env.after = (delayMs, run) => after(delayMs, () => dead || run());
      const outbox = createOutbox(env);
      const kill = () => {
        dead = true;
        outbox.stop();
      };
      return Object.assign(outbox, { env, kill });
    },
  };
  return world;
}

export const jobId = '019a0000-0000-7000-8000-000000000001';

export function reading(text: string, more: Partial<Draft> = {}): Draft {
  return {
    kind: 'reading',
    jobId,
    row: {
      personId: null,
      text,
      unit: 'mm',
      valuePm: Math.round(Number(text) * 1e9),
      resolutionPm: 1_000_000,
      pieceId: '019a0000-0000-7000-8000-000000000002',
      featureId: '019a0000-0000-7000-8000-000000000003',
      gaugeId: '019a0000-0000-7000-8000-000000000004',
      station: 'mouth',
      direction: '0',
      temperatureMilliC: null,
      heldAs: null,
    },
    ...more,
  } as Draft;
}

export function voiding(readingId: string): Draft {
  return {
    kind: 'correction',
    jobId,
    row: {
      personId: null,
      readingId,
      kind: 'void',
      reason: '',
      toPieceId: null,
      toFeatureId: null,
      toStation: null,
      toDirection: null,
      text: null,
      unit: null,
      valuePm: null,
      resolutionPm: null,
    },
  };
}

/** Keeps so many readings one after another. */
export async function keepMany(tab: Tab, count: number): Promise<Entry[]> {
  const entries: Entry[] = [];
  for (let i = 0; i < count; i += 1) entries.push(await tab.keep(reading(String(20 + i / 1000))));
  return entries;
}

/** Lets everything that needs no clock run out. */
export async function quiet(turns = 150): Promise<void> {
  for (let i = 0; i < turns; i += 1) await new Promise((next) => setImmediate(next));
}

/** Lets time go by in steps, with everything it sets going. */
export async function pass(world: World, ms: number, stepMs = 1000): Promise<void> {
  await quiet();
  for (let gone = 0; gone < ms; gone += stepMs) {
    world.clock.advance(Math.min(stepMs, ms - gone));
    await quiet();
  }
}

export type FakeStream = EventStream & {
  url: string;
  closed: boolean;
  send: (type: string, data?: unknown) => void;
};

function createStream(url: string): FakeStream {
  const listeners = new Map<string, (event: { data?: unknown }) => void>();
  const stream: FakeStream = {
    url,
    closed: false,
    addEventListener: (type, hear) => void listeners.set(type, hear),
    close() {
      stream.closed = true;
    },
    send: (type, data) =>
      listeners.get(type)?.({ data: typeof data === 'string' ? data : JSON.stringify(data) }),
  };
  return stream;
}

/** The browser's locks as far as they are used: one holder, taking only what is free, stealing. */
export function createLocks(): Locks {
  let holder: { robbed: (reason: unknown) => void } | null = null;
  return {
    async request(_, options, work) {
      if (holder !== null && !options.steal) return work(null);
      holder?.robbed(new DOMException('stolen', 'AbortError'));
      return new Promise((resolve, reject) => {
        const me = { robbed: reject };
        holder = me;
        work({})
          .then(resolve, reject)
          .finally(() => {
            if (holder === me) holder = null;
          });
      });
    },
  };
}
