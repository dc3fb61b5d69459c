import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import type { Change } from '@/lib/schema/change';
import { closeStore, store } from '@/lib/store/client';
import { followChanges } from '@/lib/store/follow-changes';
import { lastSeq } from '@/lib/store/last-seq';
import { makeThing } from '@/lib/store/make-thing';
import { keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, newJob, who } from './a-job';
import { runProcess } from './run-process';

afterAll(closeStore);

const person = (name: string) => ({ id: uuidv7(), name });
const nameOf = ({ after }: Change) => after['name'];

/** Follows and collects; `until` waits for so many, a second at most. */
async function follow(which: Parameters<typeof followChanges>[0] = {}) {
  const seen: Change[] = [];
  const stop = await followChanges(which, (changes) => void seen.push(...changes));
  const until = async (count: number, longestMs = 1000) => {
    const end = Date.now() + longestMs;
    while (seen.length < count && Date.now() < end) await wait(5);
    return seen;
  };
  return { seen, stop, until };
}

describe('followChanges', () => {
  it('gives what is kept in this process at once, in order', async () => {
    const { stop, until } = await follow();
    for (const name of ['one', 'two', 'three']) await makeThing('person', person(name), who);
    expect((await until(3)).map(nameOf)).toEqual(['one', 'two', 'three']);
    stop();
  });

  it('does not wait for its own rhythm to give what this process keeps', async () => {
    const job = await aJob();
    const { stop, until, seen } = await follow();
    const begun = Date.now();
    for (let i = 1; i <= 8; i += 1) {
      await keepReadings({ deviceId: who.deviceId, entries: [job.reading()] });
      await until(2 * i - 1);
      await makeThing('person', person('now'), who);
      await until(2 * i);
    }
    expect(seen).toHaveLength(16);
    // Each is kept right after a look at the log: left to the rhythm alone, eight of them take 1.2 s.
    expect(Date.now() - begun).toBeLessThan(1000);
    stop();
  });

  it('gives once what it finds in the log before the feed comes to tell of it', async () => {
    const others = await follow();
    const after = await lastSeq();
    const { write } = await store();
    const id = uuidv7();
    await write(
      `INSERT INTO "ChangeLog" ("at", "deviceId", "thing", "thingId", "act", "after")
       VALUES ('2026-11-25T08:00:00.000Z', 'past the store', 'person', $1, 'made', '{}')`,
      [id],
    );
    const { until, seen, stop } = await follow({ after });
    await until(1);
    await others.until(1);
    await wait(50);
    expect(seen.map(({ thingId }) => thingId)).toEqual([id]);
    stop();
    others.stop();
  });

  it('gives first what came after the number asked for, then what comes, each once', async () => {
    const after = await lastSeq();
    for (let i = 0; i < 3; i += 1) await makeThing('person', person(`early ${i}`), who);
    const following = follow({ after });
    for (let i = 0; i < 3; i += 1) await makeThing('person', person(`late ${i}`), who);
    const { stop, until } = await following;
    expect((await until(6)).map(nameOf)).toEqual([
      'early 0',
      'early 1',
      'early 2',
      'late 0',
      'late 1',
      'late 2',
    ]);
    await wait(400);
    expect((await until(6)).length).toBe(6);
    stop();
  });

  it('gives without a number only what is yet to come', async () => {
    await makeThing('person', person('before'), who);
    const { stop, until } = await follow();
    await makeThing('person', person('after'), who);
    expect((await until(1)).map(nameOf)).toEqual(['after']);
    stop();
  });

  it('gives of one job its changes and those of no job', async () => {
    const job = await aJob();
    const { stop, until } = await follow({ jobId: job.jobId });
    await makeThing('job', newJob(), who);
    const reading = job.reading();
    await keepReadings({ deviceId: who.deviceId, entries: [reading] });
    await makeThing('person', person('Ruth'), who);
    const seen = await until(2);
    expect(seen.map(({ thing }) => thing)).toEqual(['reading', 'person']);
    expect(seen[0]!.after).toMatchObject(reading);
    stop();
  });

  it('gives nothing more once it is stopped', async () => {
    const { stop, seen } = await follow();
    stop();
    await makeThing('person', person('late'), who);
    await wait(300);
    expect(seen).toEqual([]);
  });

  it('leaves nothing out and doubles nothing for one who takes slowly', async () => {
    const job = await aJob();
    const seen: number[] = [];
    let most = 0;
    let goOn = () => {};
    const allKept = new Promise<void>((resolve) => (goOn = resolve));
    const stop = await followChanges({}, async (changes) => {
      most = Math.max(most, changes.length);
      await allKept;
      seen.push(...changes.map(({ seq }) => seq));
    });
    for (let i = 0; i < 14; i += 1) {
      const entries = Array.from({ length: 100 }, () => job.reading());
      await keepReadings({ deviceId: who.deviceId, entries });
    }
    await wait(300);
    goOn();
    const end = Date.now() + 10_000;
    while (seen.length < 1400 && Date.now() < end) await wait(20);
    stop();
    expect(seen).toHaveLength(1400);
    expect(new Set(seen).size).toBe(1400);
    expect(seen).toEqual(seen.toSorted((a, b) => a - b));
    expect(most).toBeLessThanOrEqual(500);
  });

  it('gives within a second what other processes write to the same database', async () => {
    const arrived = new Map<string, number>();
    const stop = await followChanges({}, (changes) => {
      for (const { thingId } of changes) arrived.set(thingId, Date.now());
    });
    const rows = [person('from one'), person('from two')];
    const runs = rows.map((row) => runProcess('write-person.ts', JSON.stringify(row)));
    const ended = await Promise.all(runs.map(({ end }) => end));
    await wait(500);
    rows.forEach(({ id }, i) => {
      const keptAt = Number(ended[i]!.output.trim());
      expect(arrived.get(id)! - keptAt, ended[i]!.errors).toBeLessThan(1000);
    });
    stop();
  });
});
