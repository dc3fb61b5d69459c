import type { ThingKind } from '@/lib/schema/change';
import type { StoreTransaction } from './database';
import type { Fields } from './thing-types';

/** The row as it was when it was made, whatever has been changed on it since. */
export async function asMade(
  transaction: StoreTransaction,
  kind: ThingKind,
  row: Fields & { id: string; version: number },
): Promise<Fields> {
  if (row.version === 1) return row;
  const jobId = kind === 'job' ? row.id : ((row['jobId'] as string | undefined) ?? null);
  const line = await transaction.changeLog.findFirst({
    where: { jobId, thing: kind, thingId: row.id, act: 'made' },
    orderBy: { seq: 'asc' },
  });
  return line?.after ? (JSON.parse(line.after) as Fields) : row;
}
