import type { Connection, Tx } from './connection';
import type { Environment } from './environment';

/** The name of the cookie and of the word in local storage. */
const deviceKey = 'fw-device';

type Places = Pick<Environment, 'keepsakes' | 'newId'>;

/**
 * This device's id, made once and kept in three places, each healed from the others.
 *
 * The database decides, and of two tabs that start together the first to reach it; then local storage,
 * then the cookie, then a new id. Where the database cannot be reached the answer is what the other two
 * know, so that a page can still name its device.
 *
 * Limits: a browser that clears all three gives a new device.
 */
export async function deviceId(env: Places, connection: Connection): Promise<string> {
  const candidate = candidateId(env);
  const id = await connection
    .run('readwrite', (tx) => deviceIdIn(tx, candidate))
    .catch(() => candidate);
  healDeviceId(env, id);
  return id;
}

/** What the places beside the database know, or a new id. */
export function candidateId(env: Places): string {
  return env.keepsakes.map(({ read }) => read(deviceKey)).find(isId) ?? env.newId();
}

/** The id in the database; the candidate becomes it where there is none. */
export async function deviceIdIn(tx: Tx<'readwrite'>, candidate: string): Promise<string> {
  const meta = tx.objectStore('meta');
  const known = await meta.get('deviceId');
  if (isId(known)) return known;
  await meta.put(candidate, 'deviceId');
  return candidate;
}

/** Writes the id where it is missing or another. */
export function healDeviceId(env: Places, id: string): void {
  for (const keepsake of env.keepsakes) {
    if (keepsake.read(deviceKey) !== id) keepsake.write(deviceKey, id);
  }
}

function isId(value: unknown): value is string {
  return typeof value === 'string' && /^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/.test(value);
}
