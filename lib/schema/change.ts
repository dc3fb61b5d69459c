import { z } from 'zod';
import { Instant } from './common';

export const thingKinds = [
  'job',
  'part',
  'piece',
  'feature',
  'gauge',
  'person',
  'fit',
  'pair',
  'cut',
  'run',
  'runEvent',
  'departure',
  'setting',
  'picture',
  'material',
  'fitRule',
] as const;
export const ThingKind = z.enum(thingKinds);
export type ThingKind = z.infer<typeof ThingKind>;

/** One line of the change log, as the live feed sends it; `after` is the row as it now is. */
export const Change = z.object({
  seq: z.int(),
  at: Instant,
  personId: z.string().nullable(),
  deviceId: z.string(),
  jobId: z.string().nullable(),
  thing: z.enum([...thingKinds, 'reading', 'correction']),
  thingId: z.string(),
  act: z.enum(['made', 'changed', 'struck', 'put back', 'kept']),
  after: z.record(z.string(), z.unknown()),
});
export type Change = z.infer<typeof Change>;
