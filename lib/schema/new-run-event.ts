import { z } from 'zod';
import { Id } from './common';
import { noted } from './noted-at';
import { eventSaid } from './run';

/**
 * Something that happened to a run as a device notes it at the machine, with or without a network. When it
 * happened is when the device kept it.
 */
export const NewRunEvent = z.strictObject({ ...noted, runId: Id, ...eventSaid });
export type NewRunEvent = z.infer<typeof NewRunEvent>;
