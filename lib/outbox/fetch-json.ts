import type { Environment } from './environment';
import { ProblemError } from './problem-error';
import { withTimeout } from './with-timeout';

export type Send = <T = unknown>(method: string, path: string, body?: unknown) => Promise<T>;

/**
 * A client for the editable things of the API: JSON out, JSON in, with who asks in the headers.
 *
 * An answer without a body is `undefined`. Nothing is tried again here: a thing whose id the caller made may be
 * sent again as it is, a change says which version it was made from.
 *
 * @throws {ProblemError} (from the function returned) for every answer that is not a success, with status 0 when
 *   there was no answer within `withinMs`
 */
export function createSend(
  env: Pick<Environment, 'fetch' | 'after'>,
  who: { deviceId: () => Promise<string>; personId: () => string | null },
  withinMs = 15_000,
): Send {
  return async <T>(method: string, path: string, body?: unknown) => {
    const headers: Record<string, string> = { 'fitwright-device': await who.deviceId() };
    const personId = who.personId();
    if (personId !== null) headers['fitwright-person'] = personId;
    if (body !== undefined) headers['content-type'] = 'application/json';
    const giveUp = new AbortController();
    const exchange = async () => {
      const response = await env.fetch(path, {
        method,
        headers,
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
        cache: 'no-store',
        signal: giveUp.signal,
      });
      return { response, text: await response.text() };
    };
    const { response, text } = await withTimeout(env, withinMs, exchange(), () => noAnswer()).catch(
      (error: unknown) => {
        giveUp.abort();
        throw error instanceof ProblemError ? error : noNetwork(error);
      },
    );
    const value = jsonOf(text);
    if (!response.ok) throw problemOf(response.status, value);
    if (text !== '' && value === undefined) {
      throw new ProblemError({
        status: response.status,
        code: 'not-understood',
        title: 'The answer is not JSON',
      });
    }
    return value as T;
  };
}

const noAnswer = () =>
  new ProblemError({ status: 0, code: 'no-answer', title: 'The server did not answer in time' });
const noNetwork = (cause: unknown) =>
  new ProblemError({
    status: 0,
    code: 'no-network',
    title: 'The server could not be reached',
    cause,
  });

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function problemOf(status: number, value: unknown): ProblemError {
  const told = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >;
  const type = typeof told.type === 'string' ? told.type : '';
  return new ProblemError({
    status,
    code: type.split('/').at(-1) || `status-${status}`,
    title: typeof told.title === 'string' ? told.title : '',
    errors: Array.isArray(told.errors)
      ? (told.errors as unknown[]).filter(isFault).map(({ at, says }) => ({ at, says }))
      : [],
    current: told.current,
    yours: told.yours,
  });
}

function isFault(value: unknown): value is { at: string; says: string } {
  const fault = value as { at?: unknown; says?: unknown } | null;
  return typeof fault?.at === 'string' && typeof fault.says === 'string';
}
