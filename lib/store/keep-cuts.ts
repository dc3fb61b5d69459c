import type { z } from 'zod';
import { NewCut } from '@/lib/schema/new-cut';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { keepNoted } from './keep-noted';
import { rowsOf } from './rows-of';

/**
 * Keeps cuts a device has noted: see keepNoted. The place in the order of cuts of its piece and feature is the
 * next free one, so that cuts of two devices never want the same.
 */
export function keepCuts(batch: z.infer<typeof Batch>): Promise<Outcome[]> {
  return keepNoted(
    {
      kind: 'cut',
      name: 'cut',
      schema: NewCut,
      async complete(transaction, cut) {
        const { pieceId, featureId } = cut;
        const piece = await rowsOf(transaction, 'piece').one(pieceId);
        if (piece === undefined) return { code: 'no-such-piece', at: 'pieceId' };
        const earlier = await rowsOf(transaction, 'cut').where({ pieceId, featureId });
        const ordinal = Math.max(0, ...earlier.map((other) => other.ordinal)) + 1;
        return { ...cut, jobId: piece.jobId, ordinal, afterPm: null };
      },
    },
    batch,
  );
}
