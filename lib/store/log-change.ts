import type { Change, ThingKind } from '@/lib/schema/change';
import type { StoreTransaction } from './database';
import type { Fields } from './thing-types';
import type { Who } from './who';

export type Act = Exclude<Change['act'], 'kept'>;

type Line = { kind: ThingKind; act: Act; before: Fields | null; after: Fields & { id: string } };

/**
 * Writes lines of the change log. Always the last thing a transaction does before it ends: on PostgreSQL
 * the order of the lines is the order of commit.
 */
export async function logChange(
  transaction: StoreTransaction,
  who: Who,
  at: string,
  lines: readonly Line[],
): Promise<void> {
  if (lines.length === 0) return;
  await transaction.changeLog.createMany({
    data: lines.map(({ kind, act, before, after }) => ({
      at,
      personId: who.personId,
      deviceId: who.deviceId,
      jobId: kind === 'job' ? after.id : ((after['jobId'] as string | undefined) ?? null),
      thing: kind,
      thingId: after.id,
      act,
      before: before === null ? null : JSON.stringify(before),
      after: JSON.stringify(after),
    })),
  });
}
