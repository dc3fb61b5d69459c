import 'fake-indexeddb/auto';
import { IDBFactory } from 'fake-indexeddb';
import { beforeEach, expect, it } from 'vitest';
import type { JobSheet } from '@/lib/schema/sheet';
import { createShelf } from '@/lib/shelf/shelf';

let nowMs = 0;
const chosen = { unit: 'mm', decimal: '.', hand: 'right', personId: null, theme: null } as const;
const sheetOf = (seq: number, name = 'Rings', number = 1) =>
  ({
    seq,
    job: { name, number },
    readings: [],
    materials: [],
    fitRules: [],
    runs: [],
  }) as unknown as JobSheet;

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
  nowMs = 1000;
});
const shelf = () => createShelf({ nowMs: () => nowMs });

it('gives back the job as it was put there last', async () => {
  const here = shelf();
  await here.put({ jobId: 'a', sheet: sheetOf(3), chosen });
  nowMs = 2000;
  await here.put({ jobId: 'a', sheet: sheetOf(5, 'Rings, made again'), chosen });
  expect(await here.get('a')).toEqual({
    jobId: 'a',
    sheet: sheetOf(5, 'Rings, made again'),
    chosen,
    keptAtMs: 2000,
  });
  expect(await here.list()).toEqual([
    { jobId: 'a', name: 'Rings, made again', number: 1, keptAtMs: 2000 },
  ]);
});

it('takes an older sheet over a newer one: the notebook may have been put back from a copy', async () => {
  const here = shelf();
  await here.put({ jobId: 'a', sheet: sheetOf(9), chosen });
  await here.put({ jobId: 'a', sheet: sheetOf(4), chosen });
  expect((await here.get('a'))!.sheet.seq).toBe(4);
});

it('opens a copy that an earlier program put aside, with the lists it did not have', async () => {
  const job = { name: 'Rings', number: 1 };
  const old = { seq: 3, job, readings: [], runs: [] } as unknown as JobSheet;
  const here = shelf();
  await here.put({ jobId: 'a', sheet: old, chosen });
  expect((await here.get('a'))!.sheet).toEqual(sheetOf(3));
});

it('opens a run of an earlier program with the settings its charts then had', async () => {
  const sheet = { ...sheetOf(3), runs: [{ id: 'r', control: 'ewma', sumDecisionMilli: 4000 }] };
  const here = shelf();
  await here.put({ jobId: 'a', sheet: sheet as unknown as JobSheet, chosen });
  expect((await here.get('a'))!.sheet.runs).toEqual([
    {
      id: 'r',
      control: 'ewma',
      averageWeightMilli: 200,
      averageWidthMilli: 3000,
      sumReferenceMilli: 500,
      sumDecisionMilli: 4000,
    },
  ]);
});

it('has nothing of a job that was never opened here', async () => {
  expect(await shelf().get('b')).toBeNull();
  expect(await shelf().list()).toEqual([]);
});

it('keeps twelve jobs, those opened last', async () => {
  const here = shelf();
  for (let i = 1; i <= 14; i += 1) {
    nowMs = i * 1000;
    await here.put({ jobId: `job ${i}`, sheet: sheetOf(1, `Job ${i}`, i), chosen });
  }
  const numbers = (await here.list()).map(({ number }) => number);
  expect(numbers).toEqual([14, 13, 12, 11, 10, 9, 8, 7, 6, 5, 4, 3]);
  expect(await here.get('job 2')).toBeNull();
  expect(await here.get('job 3')).not.toBeNull();
});

it('stands in no other tab’s way', async () => {
  await shelf().put({ jobId: 'a', sheet: sheetOf(1), chosen });
  // A tab of a later version can upgrade at once: no handle is held.
  const opening = indexedDB.open('fitwright-shelf', 2);
  const outcome = await new Promise((done) => {
    opening.addEventListener('blocked', () => done('blocked'));
    opening.addEventListener('success', () => done('open'));
  });
  expect(outcome).toBe('open');
});
