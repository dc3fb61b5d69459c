import { z } from 'zod';
import type { ThingKind } from '@/lib/schema/change';
import { Id } from '@/lib/schema/common';
import { SettingId } from '@/lib/schema/setting';
import { things } from '@/lib/schema/things';
import { changeProblems, type Address } from './described';
import { kindNames } from './kind-names';

const words: Record<ThingKind, [one: string, many: string]> = {
  job: ['a job', 'all jobs'],
  part: ['a part', 'the parts of a job'],
  piece: ['a piece', 'the pieces of a job'],
  feature: ['a feature', 'the features of a job'],
  gauge: ['a gauge', 'all gauges'],
  person: ['a person', 'all people'],
  fit: ['a fit', 'the fits of a job'],
  pair: ['a pair', 'the pairs of a job'],
  cut: ['a cut', 'the cuts of a job'],
  run: ['a run', 'the runs of a job'],
  runEvent: ['an event of a run', 'the events of all runs of a job'],
  departure: ['a departure', 'the departures of a job'],
  setting: ['the choices of the shop or a device', 'all choices'],
  picture: ['a picture of the drawing', 'the pictures of a job'],
  material: ["a material of the shop's own", "the shop's own materials"],
  fitRule: ["a rule of practice of the shop's own", "the shop's own rules of practice"],
};

const Says = z.object({
  'fitwright-says': z.string().optional().describe('What a person should know of it besides'),
});

/** The four ways to deal with one kind of thing: list, make, show, change. */
export function thingAddresses(kind: ThingKind): Address[] {
  const { Row, New, Change } = things[kind];
  const [one, many] = words[kind];
  const path = `/${kindNames[kind]}`;
  const params = z.object({ id: kind === 'setting' ? SettingId : Id });
  const hasJob = 'jobId' in Row.shape;
  return [
    {
      method: 'get',
      path,
      summary: `List ${many}`,
      ...(hasJob && { query: z.object({ job: Id }) }),
      answers: { 200: { says: 'Struck ones among them', body: z.object({ rows: z.array(Row) }) } },
      problems: hasJob ? ['wrong-shape'] : [],
    },
    {
      method: 'post',
      path,
      summary: `Make ${one}`,
      more: 'Safe to repeat: the same id with the same content is there once.',
      who: true,
      body: New,
      answers: {
        200: { says: 'It was in the book already', body: Row },
        201: { says: 'It is made', body: Row },
      },
      problems: [...changeProblems, 'who-missing'],
      refusable: true,
    },
    {
      method: 'get',
      path: `${path}/{id}`,
      summary: `Show ${one}`,
      params,
      answers: { 200: { says: 'As it now is', body: Row } },
      problems: ['no-such-thing'],
    },
    {
      method: 'patch',
      path: `${path}/{id}`,
      summary: `Change ${one}, strike it out or put it back`,
      more: 'Says which version the change was made from. A stale one is answered with both texts.',
      params,
      who: true,
      body: Change,
      answers: { 200: { says: 'As it now is', body: Row, headers: Says } },
      problems: [...changeProblems, 'who-missing', 'no-such-thing', 'stale'],
      refusable: true,
    },
  ];
}
