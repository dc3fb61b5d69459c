import { z } from 'zod';
import { Id, Name, thing } from './common';

/** The largest picture of a drawing that is taken, in bytes. */
export const pictureBytesMax = 8_000_000;

const shapes = thing({
  fixed: { jobId: Id },
  fields: { name: Name },
  made: {
    mediaType: z.enum(['image/png', 'image/jpeg']),
    widthPx: z.int().min(1).max(20_000),
    heightPx: z.int().min(1).max(20_000),
  },
});

/** A picture of the drawing; its bytes are at /api/v1/pictures/{id}/file and never change. */
export const picture = {
  ...shapes,
  New: shapes.New.extend({
    base64: z
      .base64()
      .max(Math.ceil((pictureBytesMax * 4) / 3) + 4)
      .describe('The PNG or JPEG file'),
  }),
};
export type Picture = z.infer<typeof picture.Row>;
