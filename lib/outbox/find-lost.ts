import type { DeviceHeld } from '@/lib/schema/device';
import type { Entry } from './entry';
import type { Environment } from './environment';
import { withTimeout } from './with-timeout';

const answerWithinMs = 15_000;

/**
 * The running numbers of entries that were named as "in the book" and that the book does not have now: loss
 * that showed no error, such as a notebook put back from an older copy. Null where the server gives no answer.
 *
 * The copies were read before the server is asked, so whatever they call "in the book" must be in its answer.
 * Asks nothing where nothing was ever acknowledged.
 */
export async function findLost(
  env: Pick<Environment, 'fetch' | 'after'>,
  copies: readonly Entry[],
): Promise<number[] | null> {
  const booked = copies.filter(({ state }) => state === 'in the book');
  const lost: number[] = [];
  for (const deviceId of new Set(booked.map((copy) => copy.deviceId))) {
    const held = await ask(env, deviceId);
    if (held === null) return null;
    const isMissing = (seq: number) =>
      seq > held.highest || held.gaps.some(({ from, to }) => from <= seq && seq <= to);
    for (const copy of booked) {
      if (copy.deviceId === deviceId && isMissing(copy.deviceSeq)) lost.push(copy.deviceSeq);
    }
  }
  return lost;
}

async function ask(
  env: Pick<Environment, 'fetch' | 'after'>,
  deviceId: string,
): Promise<DeviceHeld | null> {
  const giveUp = new AbortController();
  const exchange = async () => {
    const response = await env.fetch(`/api/v1/devices/${deviceId}`, {
      method: 'GET',
      headers: { 'fitwright-device': deviceId },
      cache: 'no-store',
      signal: giveUp.signal,
    });
    return response.ok ? ((await response.json()) as DeviceHeld) : null;
  };
  const held = await withTimeout(env, answerWithinMs, exchange(), () => new Error('late')).catch(
    () => null,
  );
  if (held === null) giveUp.abort();
  return held !== null && Number.isSafeInteger(held.highest) && Array.isArray(held.gaps)
    ? held
    : null;
}
