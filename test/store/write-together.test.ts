import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { closeStore, store } from '@/lib/store/client';
import { readingKind } from '@/lib/store/entry-kinds';
import { entrySql } from '@/lib/store/entry-sql';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepReadings } from '@/lib/store/readings';
import { writeTogether, type PackedEntry } from '@/lib/store/write-together';
import { aJob, who } from './a-job';

let job: Awaited<ReturnType<typeof aJob>>;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

function packed(more: object = {}): PackedEntry {
  const row: Record<string, unknown> = { ...job.reading(), ...more };
  const columns = readingKind.columns.map(({ name }) => row[name]);
  return [...columns, '2026-11-25T08:00:00.000Z', who.deviceId] as unknown as PackedEntry;
}

describe('writeTogether', () => {
  it('hands each request the numbers of its own entries', async () => {
    const requests = Array.from({ length: 10 }, () => [packed(), packed()]);
    const kept = await Promise.all(requests.map((entries) => writeTogether(readingKind, entries)));
    kept.forEach((numbers, i) => {
      expect([...numbers.keys()]).toEqual(requests[i]!.map(([id]) => id));
    });
    const numbers = kept.flatMap((one) => [...one.values()]);
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(new Set(numbers).size).toBe(20);
  });

  it('tells the first of two requests with one id that it was kept, and the second that it was not', async () => {
    const entry = packed();
    const [first, second] = await Promise.all([
      writeTogether(readingKind, [entry]),
      writeTogether(readingKind, [entry]),
    ]);
    expect([first.size, second.size]).toEqual([1, 0]);
  });

  it('lets nobody fail for the fault of another', async () => {
    const good = [packed(), packed()];
    const outcomes = await Promise.allSettled([
      writeTogether(readingKind, [good[0]!]),
      writeTogether(readingKind, [packed({ text: null })]),
      writeTogether(readingKind, [good[1]!]),
    ]);
    expect(outcomes.map(({ status }) => status)).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    const kept = (await jobSheet(job.jobId))!.readings.map(({ id }) => id);
    expect(kept.slice(-2)).toEqual(good.map(([id]) => id));
  });

  it('goes on after a failure', async () => {
    await expect(writeTogether(readingKind, [packed({ unit: null })])).rejects.toThrow(/null/i);
    expect((await writeTogether(readingKind, [packed()])).size).toBe(1);
  });

  it('takes more in one moment than one statement does', async () => {
    const write = vi.spyOn(await store(), 'write');
    const requests = Array.from({ length: 25 }, () =>
      Array.from({ length: 100 }, () => job.reading()),
    );
    const outcomes = await Promise.all(
      requests.map((entries) => keepReadings({ deviceId: who.deviceId, entries })),
    );
    expect(outcomes.flat().filter(({ state }) => state === 'kept')).toHaveLength(2500);
    expect(write).toHaveBeenCalledTimes(3);
    write.mockRestore();
  });

  it('keeps in one statement what comes at once, and in its own what comes alone', async () => {
    const write = vi.spyOn(await store(), 'write');
    await Promise.all(Array.from({ length: 20 }, () => writeTogether(readingKind, [packed()])));
    expect(write).toHaveBeenCalledTimes(1);
    await writeTogether(readingKind, [packed()]);
    await writeTogether(readingKind, [packed()]);
    await wait(20);
    expect(write).toHaveBeenCalledTimes(3);
    write.mockRestore();
  });
});

describe('the statement that keeps', () => {
  it('keeps each entry once when several processes bring the same in opposite orders at once', async () => {
    const { engine, write } = await store();
    const { keep } = entrySql(engine, readingKind);
    for (let round = 0; round < 10; round += 1) {
      const entries = Array.from({ length: 50 }, () => packed());
      const both = [entries, entries.toReversed(), entries, entries.toReversed()];
      const kept = await Promise.all(both.map((one) => write(keep, [JSON.stringify(one)])));
      expect(kept.flat()).toHaveLength(50);
    }
  });
});
