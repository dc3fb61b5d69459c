import { z } from 'zod';
import { Id, Instant } from './common';

/** The largest running number it may carry: the column is one of 32 bits. */
const deviceSeqMax = 2_147_483_647;

/** What a device sends with every thing it notes at the machine, with or without a network. */
export const noted = {
  id: Id,
  deviceTime: Instant.describe('When the device kept it, by its own clock'),
  deviceSeq: z
    .int()
    .min(1)
    .max(deviceSeqMax)
    .describe('The running number of this entry on its device, over all it notes'),
  personId: Id.nullable(),
};

/** The same on the row in the book; nothing where it was not noted at a machine. */
export const notedAt = {
  personId: Id.nullish(),
  deviceId: Id.nullish().describe('The device that noted it at the machine'),
  deviceSeq: z.int().nullish(),
  deviceTime: Instant.nullish(),
};
