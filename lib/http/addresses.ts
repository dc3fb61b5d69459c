import { z } from 'zod';
import { Id } from '@/lib/schema/common';
import { DeviceHeld } from '@/lib/schema/device';
import { NewCut } from '@/lib/schema/new-cut';
import { NewRunEvent } from '@/lib/schema/new-run-event';
import { NewStrike } from '@/lib/schema/new-strike';
import { JobStart, JobStarted } from '@/lib/schema/new-job';
import { Change, thingKinds } from '@/lib/schema/change';
import { Batch, batchMax, NewCorrection, NewReading, Outcomes } from '@/lib/schema/reading';
import { RunSeriesAnswer } from '@/lib/schema/run-series';
import { JobSheet } from '@/lib/schema/sheet';
import { changeProblems, type Address } from './described';
import { LiveQuery } from './live-query';
import { thingAddresses } from './thing-addresses';

/** Every method of every address of the API: the one table its papers are made from. */
export const addresses: readonly Address[] = [
  {
    method: 'post',
    path: '/jobs/start',
    summary: 'Start a whole job from a drawing',
    more: 'All of it is kept, or none. Pieces are made and marked by the server. Safe to repeat.',
    who: true,
    body: JobStart,
    answers: {
      200: { says: 'It was started so already', body: JobStarted },
      201: { says: 'It is started', body: JobStarted },
    },
    problems: [...changeProblems, 'who-missing'],
  },
  {
    method: 'get',
    path: '/jobs/{id}/sheet',
    summary: 'Everything of one job at one moment',
    more: 'With the number of the change-log line it is true at: follow /live from there.',
    params: z.object({ id: Id }),
    answers: { 200: { says: 'The sheet', body: JobSheet } },
    problems: ['no-such-thing'],
  },
  {
    method: 'post',
    path: '/readings',
    summary: 'Keep readings',
    more: 'Each is judged on its own: a bad one does not hold back the rest. Safe to repeat: an id that is in the book word for word is `known`. What is `kept` or `known` is on the disk.',
    body: batchOf(NewReading),
    answers: { 200: { says: 'What became of each, in the order sent', body: Outcomes } },
    problems: changeProblems,
  },
  {
    method: 'post',
    path: '/corrections',
    summary: 'Keep corrections: void, restore, count, mistyped, move',
    more: 'As readings. A correction may come before the reading it names.',
    body: batchOf(NewCorrection),
    answers: { 200: { says: 'What became of each, in the order sent', body: Outcomes } },
    problems: changeProblems,
  },
  {
    method: 'post',
    path: '/cut-log',
    summary: 'Keep cuts as a device noted them at the machine',
    more: 'As readings; their place in the order of cuts is given here. What came off is told by the readings after each.',
    body: batchOf(NewCut),
    answers: { 200: { says: 'What became of each, in the order sent', body: Outcomes } },
    problems: changeProblems,
  },
  {
    method: 'post',
    path: '/event-log',
    summary: 'Keep events of runs as a device noted them at the machine',
    more: 'As readings. Each happened when the device kept it.',
    body: batchOf(NewRunEvent),
    answers: { 200: { says: 'What became of each, in the order sent', body: Outcomes } },
    problems: changeProblems,
  },
  {
    method: 'post',
    path: '/strike-log',
    summary: 'Strike out, or put back, cuts and events of runs as a device noted it at the machine',
    more: 'As readings. What stands so already stays so.',
    body: batchOf(NewStrike),
    answers: { 200: { says: 'What became of each, in the order sent', body: Outcomes } },
    problems: changeProblems,
  },
  {
    method: 'post',
    path: '/example',
    summary: 'Load the example job',
    more: 'Safe to repeat: it is loaded once, and what was changed on it since stays.',
    body: z.strictObject({}),
    answers: { 200: { says: 'It is in the notebook', body: JobStarted } },
    problems: changeProblems,
  },
  {
    method: 'get',
    path: '/runs/{id}/series',
    summary: 'Every measured piece of a run with its size',
    more: 'Columns, in the order made: a run of any length in one small answer. Of several features alike each as its departure from its own nominal.',
    params: z.object({ id: Id }),
    answers: { 200: { says: 'The columns', body: RunSeriesAnswer } },
    problems: ['no-such-thing'],
  },
  {
    method: 'get',
    path: '/devices/{id}',
    summary: 'What the book has of one device',
    more: 'Its highest running number and the numbers below it that are not in the book. A device holds it against what it has sent, and sends again what was lost.',
    params: z.object({ id: Id }),
    answers: { 200: { says: 'Of a device that is not known: nothing', body: DeviceHeld } },
    problems: ['no-such-thing'],
  },
  {
    method: 'get',
    path: '/live',
    summary: 'Changes as they happen',
    more: 'Server-sent events: the data of each is a Change, its id the number in the log. First those after `after`, then each as it is kept. An event `beat` comes at once and then every 15 s.',
    query: LiveQuery,
    answers: { 200: { says: 'A stream without an end', type: 'text/event-stream', body: Change } },
    problems: ['wrong-shape'],
  },
  {
    method: 'get',
    path: '/pictures/{id}/file',
    summary: 'The bytes of a picture',
    params: z.object({ id: Id }),
    answers: { 200: { says: 'The PNG or JPEG file', type: 'image/*' } },
    problems: ['no-such-thing'],
  },
  {
    method: 'get',
    path: '/health',
    summary: 'Whether the database answers',
    answers: {
      200: {
        says: 'It does',
        body: z.object({
          state: z.literal('ok'),
          database: z.enum(['sqlite', 'postgresql']),
          seq: z.int().describe('The number of the newest line of the change log'),
        }),
      },
    },
    problems: [],
  },
  {
    method: 'get',
    path: '/hello',
    summary: 'An answer that touches nothing',
    answers: { 200: { says: 'Hello', body: z.object({ hello: z.string() }) } },
    problems: [],
  },
  {
    method: 'get',
    path: '/openapi.json',
    summary: 'This description',
    answers: { 200: { says: 'An OpenAPI 3.1 document', body: z.looseObject({}) } },
    problems: [],
  },
  ...thingKinds.flatMap(thingAddresses),
];

/** As `Batch`, with what each entry has to be. */
function batchOf(entry: z.ZodType) {
  return Batch.extend({ entries: z.array(entry).min(1).max(batchMax) });
}
