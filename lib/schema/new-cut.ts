import { z } from 'zod';
import { Id, Instant, LengthPm } from './common';
import { cutSetting } from './fit';

/** The largest running number a cut may carry: the column is one of 32 bits. */
const deviceSeqMax = 2_147_483_647;

/**
 * One cut as a device notes it at the machine, with or without a network. Its place in the order of cuts is
 * given by the server, so that two devices cannot take the same one; what came off is told by the readings.
 */
export const NewCut = z.strictObject({
  id: Id,
  deviceTime: Instant.describe('When the device kept it, by its own clock'),
  deviceSeq: z
    .int()
    .min(1)
    .max(deviceSeqMax)
    .describe(
      'The running number of this entry on its device, over readings, corrections and cuts',
    ),
  personId: Id.nullable(),
  pieceId: Id,
  featureId: Id,
  lastReadingId: Id.nullable(),
  spring: z.boolean(),
  askedPm: LengthPm.min(0),
  beforePm: LengthPm,
  tool: z.string().trim().max(120),
  ...cutSetting,
});
export type NewCut = z.infer<typeof NewCut>;
