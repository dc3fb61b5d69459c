import { z } from 'zod';
import { Id } from './common';

const DeviceSeq = z.int().min(1);

/** What the book has of one device: so that a device can tell what it sent and the book does not have. */
export const DeviceHeld = z.object({
  deviceId: Id,
  highest: z.int().min(0).describe('The highest running number of the device in the book; 0: none'),
  gaps: z
    .array(z.object({ from: DeviceSeq, to: DeviceSeq }))
    .describe('Runs of numbers below that which are not in the book, newest first, 1000 at most'),
});
export type DeviceHeld = z.infer<typeof DeviceHeld>;
