import type { Outcome } from '@/lib/schema/reading';
import type { Clock } from './clock';

type Row = { id: string; deviceSeq: number; text?: string } & Record<string, unknown>;
type Request = { path: string; deviceId: string; entries: Row[] };

/** What may happen to one request on its way there and back. */
export type Fault =
  | 'no network'
  | 'cut after commit'
  | 'late'
  | 'repeated'
  | 'overtaken'
  | 'names half'
  | 'names none'
  | 'a portal answers'
  | 401
  | 403
  | 404
  | 429
  | 500
  | 503;

/** A server that keeps rows as the real one promises: an id once, a running number of a device once. */
export type Book = {
  fetch: (url: string, init: RequestInit) => Promise<Response>;
  rows: Map<string, { row: Row; seq: number; deviceId: string; path: string; receivedAt: string }>;
  /** Every request that was sent, in order. */
  requests: Request[];
  /** Devices that asked what the book has of them, in order. */
  comparisons: string[];
  /** Faults for the next requests, first to last. */
  faults: (Fault | null)[];
  /** A fault for every request, until it is taken away. */
  broken: Fault | null;
  /** Ids refused one by one, with the code. */
  refused: Map<string, string>;
  /** Ids for whose sake a whole request is refused with this status. */
  poison: Map<string, number>;
  retryAfter: string | null;
  /** Requests that were overtaken get there now. */
  deliverLate: () => void;
};

export function createBook(clock: Clock): Book {
  const overtaken: Request[] = [];

  const judge = (path: string, deviceId: string, row: Row): Outcome => {
    const { id } = row;
    const receivedAt = new Date(clock.nowMs()).toISOString();
    const known = book.rows.get(id);
    if (known !== undefined) {
      if (JSON.stringify(known.row) !== JSON.stringify(row)) {
        return { id, state: 'refused', code: 'id-taken', at: 'id', says: 'another row has it' };
      }
      return { id, state: 'known', seq: known.seq, receivedAt: known.receivedAt };
    }
    const code = book.refused.get(id);
    if (code !== undefined) return { id, state: 'refused', code, at: 'pieceId', says: 'no piece' };
    const numbers = [...book.rows.values()].filter((other) => other.deviceId === deviceId);
    if (numbers.some((other) => other.row.deviceSeq === row.deviceSeq)) {
      return { id, state: 'refused', code: 'number-taken', at: 'deviceSeq', says: 'taken' };
    }
    const seq = book.rows.size + 1;
    book.rows.set(id, { row, seq, deviceId, path, receivedAt });
    return { id, state: 'kept', seq, receivedAt };
  };
  const deliver = ({ path, deviceId, entries }: Request) =>
    entries.map((row) => judge(path, deviceId, row));

  const date = () => new Date(Math.floor(clock.nowMs() / 1000) * 1000).toUTCString();
  const answer = (status: number, body: unknown, more: Record<string, string> = {}) =>
    new Response(typeof body === 'string' ? body : JSON.stringify(body), {
      status,
      headers: { date: date(), ...more },
    });

  /** What the book has of one device, as `/api/v1/devices/{id}` says it. */
  const held = (deviceId: string) => {
    book.comparisons.push(deviceId);
    if (book.broken !== null) throw new TypeError('Failed to fetch');
    const numbers = [...book.rows.values()]
      .filter((row) => row.deviceId === deviceId)
      .map(({ row }) => row.deviceSeq)
      .sort((a, b) => a - b);
    const gaps = [0, ...numbers].flatMap((n, i) => {
      const next = numbers[i];
      return next === undefined || next === n + 1 ? [] : [{ from: n + 1, to: next - 1 }];
    });
    return answer(200, { deviceId, highest: numbers.at(-1) ?? 0, gaps });
  };

  const book: Book = {
    comparisons: [],
    rows: new Map(),
    requests: [],
    faults: [],
    broken: null,
    refused: new Map(),
    poison: new Map(),
    retryAfter: null,
    deliverLate() {
      overtaken.splice(0).forEach(deliver);
    },
    async fetch(path, init) {
      if (path.startsWith('/api/v1/devices/')) return held(path.split('/').at(-1)!);
      const { deviceId, entries } = JSON.parse(String(init.body)) as Request;
      const request = { path, deviceId, entries };
      book.requests.push(request);
      await new Promise((next) => setImmediate(next));
      const fault = book.faults.shift() ?? book.broken;
      if (fault === 'no network') throw new TypeError('Failed to fetch');
      if (fault === 'a portal answers') return answer(200, '<h1>Welcome to the guest network</h1>');
      if (typeof fault === 'number') {
        const waits = book.retryAfter === null ? {} : { 'retry-after': book.retryAfter };
        return answer(fault, { type: `/problems/p${fault}`, status: fault, title: 'No' }, waits);
      }
      if (fault === 'overtaken') {
        overtaken.push(request);
        throw new TypeError('Failed to fetch');
      }
      const bad = entries
        .map(({ id }) => book.poison.get(id))
        .find((status) => status !== undefined);
      if (bad !== undefined) {
        const errors = [{ at: 'entries', says: 'not of this world' }];
        return answer(bad, { type: '/problems/bad-batch', status: bad, title: 'Bad', errors });
      }
      if (fault === 'repeated') deliver(request);
      const outcomes = deliver(request);
      if (fault === 'cut after commit') throw new TypeError('connection reset');
      if (fault === 'late') return new Promise<Response>(() => undefined);
      if (fault === 'names half')
        return answer(200, { outcomes: outcomes.filter((_, i) => i % 2) });
      if (fault === 'names none') return answer(200, { outcomes: [] });
      return answer(200, { outcomes });
    },
  };
  return book;
}
