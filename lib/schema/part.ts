import { z } from 'zod';
import { Id, LongText, Name, ShortText, thing } from './common';

/** At most this many pieces of one part: a batch, not a factory. */
const quantityMax = 2000;

/** An item of the drawing. */
export const part = thing({
  fixed: { jobId: Id },
  fields: {
    position: z.int().min(0).max(10_000),
    name: Name,
    material: ShortText,
    prefix: z
      .string()
      .trim()
      .regex(/^[\p{L}\d]{0,6}$/u)
      .describe('What the marks of its pieces begin with: L for L1, L2'),
    quantity: z.int().min(1).max(quantityMax),
  },
  made: {},
});
export type Part = z.infer<typeof part.Row>;

/** One physical workpiece of a part. */
export const piece = thing({
  fixed: { jobId: Id, partId: Id, ordinal: z.int().min(1).max(100_000) },
  fields: {
    mark: z.string().trim().min(1).max(24),
    note: LongText,
    fate: z
      .enum(['scrapped', 'sleeve'])
      .nullish()
      .describe('Out of the pairing: scrapped for good, or until its sleeve is in'),
  },
  made: {},
});
export type Piece = z.infer<typeof piece.Row>;
