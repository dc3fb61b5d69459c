import type { EntryCell } from '@/lib/rules/entry-order';
import { recall, remember } from './device-memory';

/** What this device entered last, in one job: the piece, the feature and the reading; null where it has none. */
export function lastRead(jobId: string): (EntryCell & { id: string | null }) | null {
  try {
    const read: unknown = JSON.parse(recall(`read:${jobId}`) ?? 'null');
    return typeof read === 'object' && read !== null && 'pieceId' in read && 'featureId' in read
      ? {
          pieceId: String(read.pieceId),
          featureId: String(read.featureId),
          id: 'id' in read ? String(read.id) : null,
        }
      : null;
  } catch {
    return null;
  }
}

export function rememberRead(
  jobId: string,
  { pieceId, featureId, id }: EntryCell & { id: string },
): void {
  remember(`read:${jobId}`, JSON.stringify({ pieceId, featureId, id }));
  remember(`act:${jobId}`, String(Date.now()));
}
