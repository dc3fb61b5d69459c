import { store } from './client';
import type { Database, StoreTransaction } from './database';
import { wakeFeed } from './feed';

/** The lock whoever writes a line of the change log holds until its transaction ends. */
const changeLogLock = 41804180;
const longestMs = 10_000;

/**
 * Runs `work` in one transaction: all of it is kept, or none. On both engines there is one writer at a
 * time, so that what `work` has looked at stays true until it ends.
 */
export async function transact<Result>(
  work: (transaction: StoreTransaction, engine: Database['engine']) => Promise<Result>,
): Promise<Result> {
  const { prisma, engine } = await store();
  const result = await prisma.$transaction(
    async (transaction) => {
      if (engine === 'postgresql') {
        await transaction.$executeRawUnsafe(`SELECT pg_advisory_xact_lock(${changeLogLock})`);
      }
      return work(transaction, engine);
    },
    { maxWait: longestMs, timeout: longestMs },
  );
  wakeFeed();
  return result;
}
