import type { Connection } from './connection';
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
  const candidate = once(() => candidateId(env));
  const id = await connection
    .run('readwrite', async (tx) => {
      const known = knownDeviceId(await tx.objectStore('meta').get('deviceId'));
      if (known !== null) return known;
      await tx.objectStore('meta').put(candidate(), 'deviceId');
      return candidate();
    })
    .catch(() => candidate());
  healDeviceId(env, id);
  return id;
}

/** What the places beside the database know, or a new id. Costs a look at each of them. */
export function candidateId(env: Places): string {
  for (const { read } of env.keepsakes) {
    const id = read(deviceKey);
    if (isId(id)) return id;
  }
  return env.newId();
}

/** What the database knows; null where it knows nothing, and a candidate has to be written there. */
export function knownDeviceId(value: unknown): string | null {
  return isId(value) ? value : null;
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

/** Two attempts at one transaction must not make two ids. */
function once<T>(make: () => T): () => T {
  let made: { it: T } | null = null;
  return () => (made ??= { it: make() }).it;
}
