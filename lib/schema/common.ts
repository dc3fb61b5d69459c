import { z } from 'zod';

/** Made by the device or the server: a UUID, version 7 where Fitwright made it. */
export const Id = z
  .uuid()
  .describe('A UUID; made by the device (version 7), so that sending twice is harmless');

/** A length as a whole number of picometres; a double holds every one up to nine kilometres exactly. */
export const LengthPm = z
  .int()
  .min(-9_007_199_254_740_991)
  .max(9_007_199_254_740_991)
  .describe('A length in whole picometres (1 mm = 1 000 000 000 pm, 1 in = 25 400 000 000 pm)');

/** A length that is not negative and not nothing. */
export const PositivePm = z.int().min(1).max(9_007_199_254_740_991);

export const Unit = z.enum(['mm', 'in']);
export type Unit = z.infer<typeof Unit>;

export const DecimalMark = z.enum(['.', ',']);
export type DecimalMark = z.infer<typeof DecimalMark>;

/** RFC 3339 with an offset. */
export const Instant = z.iso.datetime({ offset: true });

/** An editable thing says which version a change was made from; a stale one is refused with both texts. */
const Version = z.int().min(1);

export const Name = z.string().trim().min(1).max(120);
export const ShortText = z.string().trim().max(120);
export const LongText = z.string().trim().max(2000);

const kept = {
  id: Id,
  version: Version,
  createdAt: Instant,
  struckAt: Instant.nullable().describe('When it was struck out; null while it counts'),
};

/**
 * The three shapes of an editable thing: the row as kept, what makes one, and what changes one.
 * `fixed` fields are given once, `fields` may change, `made` fields are the server's own.
 */
export function thing<
  Fixed extends z.ZodRawShape,
  Fields extends z.ZodRawShape,
  Made extends z.ZodRawShape,
>(shape: { fixed: Fixed; fields: Fields; made: Made }) {
  return {
    Row: z.object({ ...kept, ...shape.made, ...shape.fixed, ...shape.fields }),
    New: z.strictObject({ id: Id, ...shape.fixed, ...shape.fields }),
    Change: z
      .strictObject(shape.fields)
      .partial()
      .extend({ version: Version, struck: z.boolean().optional() }),
  };
}
