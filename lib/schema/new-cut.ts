import { z } from 'zod';
import { Id, LengthPm } from './common';
import { cutSetting } from './fit';
import { noted } from './noted-at';

/**
 * One cut as a device notes it at the machine, with or without a network. Its place in the order of cuts is
 * given by the server, so that two devices cannot take the same one; what came off is told by the readings.
 */
export const NewCut = z.strictObject({
  ...noted,
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
