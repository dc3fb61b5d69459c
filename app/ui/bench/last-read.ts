import type { EntryCell } from '@/lib/rules/entry-order';
import { recall, remember } from './device-memory';

/** The piece and the feature this device entered a reading of last, in one job; null where it has none. */
export function lastRead(jobId: string): EntryCell | null {
  try {
    const read: unknown = JSON.parse(recall(`read:${jobId}`) ?? 'null');
    return typeof read === 'object' && read !== null && 'pieceId' in read && 'featureId' in read
      ? { pieceId: String(read.pieceId), featureId: String(read.featureId) }
      : null;
  } catch {
    return null;
  }
}

export function rememberRead(jobId: string, { pieceId, featureId }: EntryCell): void {
  remember(`read:${jobId}`, JSON.stringify({ pieceId, featureId }));
  remember(`act:${jobId}`, String(Date.now()));
}
