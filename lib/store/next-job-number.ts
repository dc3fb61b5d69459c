import type { StoreTransaction } from './database';

/** The running number of a new job: one more than the largest there is. */
export async function nextJobNumber(transaction: StoreTransaction): Promise<number> {
  const { _max } = await transaction.job.aggregate({ _max: { number: true } });
  return (_max.number ?? 0) + 1;
}
