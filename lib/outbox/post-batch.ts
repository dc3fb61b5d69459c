import type { Outcome } from '@/lib/schema/reading';
import { clockSkewMs } from './clock-skew';
import type { Entry, Refusal } from './entry';
import type { Environment } from './environment';
import type { TroubleCode } from './trouble';
import { withTimeout } from './with-timeout';

/** What one request came to. */
export type Answer =
  | { kind: 'outcomes'; outcomes: ReadonlyMap<string, Outcome>; skewMs: number | null }
  /** The request as a whole was judged and refused: one of its entries, or all, cannot be taken. */
  | { kind: 'refused'; refusal: Refusal; skewMs: number | null }
  /** Nothing was judged; the same request is to be made again. */
  | { kind: 'trouble'; code: TroubleCode; waitMs: number | null };

const addresses: Record<Entry['kind'], string> = {
  reading: '/api/v1/readings',
  correction: '/api/v1/corrections',
  cut: '/api/v1/cut-log',
  event: '/api/v1/event-log',
  strike: '/api/v1/strike-log',
};

/** Statuses by which the server says that repeating will not help. */
const judged = new Set([400, 409, 413, 422]);

/**
 * Sends entries of one kind from one device in one request. Never throws: whatever happens is an answer.
 * An outcome that lacks a needed part names nothing.
 */
export async function postBatch(
  env: Pick<Environment, 'fetch' | 'nowMs' | 'after'>,
  entries: readonly [Entry, ...Entry[]],
  withinMs: number,
): Promise<Answer> {
  const { kind, deviceId } = entries[0];
  const sentMs = env.nowMs();
  const giveUp = new AbortController();
  const exchange = async () => {
    const response = await env.fetch(addresses[kind], {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'fitwright-device': deviceId },
      body: JSON.stringify({ deviceId, entries: entries.map(({ row }) => row) }),
      cache: 'no-store',
      signal: giveUp.signal,
    });
    const answeredMs = env.nowMs();
    return { response, answeredMs, body: await response.json().catch(() => undefined) };
  };
  try {
    const { response, answeredMs, body } = await withTimeout(env, withinMs, exchange(), tooLate);
    const outcomes = outcomesOf(body, new Set(entries.map(({ id }) => id)));
    const skewMs = clockSkewMs({
      sentMs,
      answeredMs,
      dateHeader: response.headers.get('date'),
      receivedAt: [...outcomes.values()].flatMap((outcome) =>
        outcome.state === 'kept' ? [outcome.receivedAt] : [],
      ),
    });
    if (response.ok) {
      if (!isAnswer(body)) return trouble('outbox/not-understood');
      return { kind: 'outcomes', outcomes, skewMs };
    }
    if (judged.has(response.status)) {
      return { kind: 'refused', refusal: refusalOf(response.status, body), skewMs };
    }
    return trouble(codeOf(response.status), response.headers.get('retry-after'));
  } catch (error) {
    giveUp.abort();
    return trouble(error === late ? 'outbox/no-answer' : 'outbox/no-network');
  }
}

const late = new Error('no answer in time');
const tooLate = () => late;

function trouble(code: TroubleCode, retryAfter: string | null = null): Answer {
  const seconds = Number(retryAfter ?? NaN);
  return { kind: 'trouble', code, waitMs: seconds > 0 ? seconds * 1000 : null };
}

function codeOf(status: number): TroubleCode {
  if (status === 401) return 'outbox/sign-in';
  if (status === 403) return 'outbox/not-allowed';
  if (status === 429) return 'outbox/busy';
  return 'outbox/server';
}

type Loose = Record<string, unknown>;
const isObject = (value: unknown): value is Loose => typeof value === 'object' && value !== null;
const isAnswer = (body: unknown): body is { outcomes: unknown[] } =>
  isObject(body) && Array.isArray(body.outcomes);
const textOf = (value: unknown) => (typeof value === 'string' ? value : '');

/** The outcomes that are whole and name an entry that was sent; of two for one id, one that keeps it wins. */
function outcomesOf(body: unknown, sent: ReadonlySet<string>): Map<string, Outcome> {
  const found = new Map<string, Outcome>();
  for (const given of isAnswer(body) ? body.outcomes : []) {
    const outcome = outcomeOf(given);
    if (outcome === null || !sent.has(outcome.id)) continue;
    if (outcome.state === 'refused' && found.has(outcome.id)) continue;
    found.set(outcome.id, outcome);
  }
  return found;
}

function outcomeOf(given: unknown): Outcome | null {
  if (!isObject(given) || typeof given.id !== 'string') return null;
  const { id, state, seq, receivedAt } = given;
  if (state === 'refused') {
    return { id, state, code: textOf(given.code), at: textOf(given.at), says: textOf(given.says) };
  }
  const kept = state === 'kept' || state === 'known';
  if (!kept || !Number.isSafeInteger(seq) || typeof receivedAt !== 'string') return null;
  return { id, state, seq: seq as number, receivedAt };
}

function refusalOf(status: number, body: unknown): Refusal {
  const problem = isObject(body) ? body : {};
  const first: unknown = Array.isArray(problem.errors) ? problem.errors[0] : undefined;
  const error = isObject(first) ? first : {};
  return {
    code: textOf(problem.type).split('/').at(-1) || `status-${status}`,
    at: textOf(error.at),
    says: textOf(error.says) || textOf(problem.title),
  };
}
