import { z } from 'zod';
import { Id } from './common';
import { noted } from './noted-at';

/**
 * A cut or an event of a run struck out, or put back, as a device notes it at the machine, with or without a
 * network. What stands so already stays so.
 */
export const NewStrike = z.strictObject({
  ...noted,
  thing: z.enum(['cut', 'runEvent']),
  thingId: Id,
  struck: z.boolean().describe('Struck out; false puts it back'),
});
export type NewStrike = z.infer<typeof NewStrike>;
