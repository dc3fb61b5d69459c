import type { Connection } from './connection';
import type { Environment } from './environment';
import { StorageFullError } from './trouble';

const lockName = 'fitwright-sender';

/** How long a tab may hold the lease without letting go, where the browser has no locks. */
const leaseMs = 20_000;

/** So many refusals in a row mean that the holder is frozen; the lock is then taken from it. */
const refusalsMax = 30;

/** Runs `work` while no other tab does; null, and no work, when another one is at it. */
export type Lease = <T>(work: () => Promise<T>) => Promise<T | null>;

/**
 * One sender at a time over all tabs: by the browser's own locks, or where they are missing (a page served over
 * plain http) by a row in the database that runs out.
 *
 * A tab that was frozen while it held the lock does not stop the others for ever. Two senders at once would be
 * wasteful but harmless, since an id is kept once.
 */
export function createLease(env: Environment, connection: Connection): Lease {
  return env.locks === null ? databaseLease(env, connection) : lockLease(env.locks);
}

function lockLease(locks: NonNullable<Environment['locks']>): Lease {
  let refusals = 0;
  return async (work) => {
    const options = refusals < refusalsMax ? { ifAvailable: true } : { steal: true };
    try {
      return await locks.request(lockName, options, async (lock) => {
        if (lock === null) {
          refusals += 1;
          return null;
        }
        refusals = 0;
        return work();
      });
    } catch (error) {
      // Taken away by another tab; what this one had begun runs on and notes its own answer.
      if ((error as { name?: unknown }).name === 'AbortError') return null;
      throw error;
    }
  };
}

function databaseLease(env: Environment, connection: Connection): Lease {
  const me = env.newId();
  const take = () =>
    connection.run(
      'readwrite',
      async (tx) => {
        const meta = tx.objectStore('meta');
        const held = (await meta.get('lease')) as { holder: string; untilMs: number } | undefined;
        const leftMs = (held?.untilMs ?? 0) - env.nowMs();
        // More time left than a lease has: the clock was set back, and the lease means nothing.
        if (held !== undefined && held.holder !== me && leftMs > 0 && leftMs <= leaseMs)
          return false;
        await meta.put({ holder: me, untilMs: env.nowMs() + leaseMs }, 'lease');
        return true;
      },
      'relaxed',
    );
  const letGo = () =>
    connection.run(
      'readwrite',
      async (tx) => {
        const meta = tx.objectStore('meta');
        const held = (await meta.get('lease')) as { holder: string } | undefined;
        if (held?.holder === me) await meta.delete('lease');
      },
      'relaxed',
    );
  return async (work) => {
    // A full store cannot note the lease; sending is then worth more than being the only sender.
    const taken = await take().catch((error: unknown) => {
      if (error instanceof StorageFullError) return true;
      throw error;
    });
    if (!taken) return null;
    try {
      return await work();
    } finally {
      await letGo().catch(() => undefined);
    }
  };
}
