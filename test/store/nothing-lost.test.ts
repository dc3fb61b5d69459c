import { setTimeout as wait } from 'node:timers/promises';
import { statSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { closeStore, store } from '@/lib/store/client';
import { jobSheet } from '@/lib/store/job-sheet';
import { keepReadings } from '@/lib/store/readings';
import { aJob, who } from './a-job';
import { runProcess, runProcessOnFullDisk } from './run-process';

const onSqlite = (process.env['TEST_DATABASE'] ?? 'sqlite') === 'sqlite';

let job: Awaited<ReturnType<typeof aJob>>;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

/** Ids on whole lines: the last line may have been cut short by the kill. */
function acknowledged(output: string): string[] {
  return output
    .split('\n')
    .slice(0, -1)
    .filter((line) => !line.startsWith('failed'))
    .flatMap((line) => line.split(' '));
}

async function keptIds(): Promise<Set<string>> {
  return new Set((await jobSheet(job.jobId))!.readings.map(({ id }) => id));
}

describe('what has been acknowledged', () => {
  it.each([1, 8, 30])('is there after SIGKILL in a stream of batches (%i in)', async (batches) => {
    const { child, output, end } = runProcess('keep-batches.ts', JSON.stringify(job.reading()));
    while (acknowledged(output()).length < batches * 10) await wait(1);
    child.kill('SIGKILL');
    expect((await end).signal).toBe('SIGKILL');
    const ids = acknowledged(output());
    expect(ids.length).toBeGreaterThanOrEqual(batches * 10);
    const kept = await keptIds();
    expect(ids.filter((id) => !kept.has(id))).toEqual([]);
  });

  it('is there when the connections are opened anew, and the file is whole', async () => {
    const before = await keptIds();
    await closeStore();
    expect(await keptIds()).toEqual(before);
    const { read } = await store();
    if (onSqlite) expect(await read('PRAGMA integrity_check')).toEqual([['ok']]);
  });
});

if (onSqlite) {
  describe('a full disk', () => {
    it('ends in a refusal that says so, and loses nothing that was acknowledged', async () => {
      const file = process.env['DATABASE_URL']!.slice('file:'.length);
      const { read } = await store();
      await read('PRAGMA wal_checkpoint(TRUNCATE)');
      const kilobytes = Math.ceil(statSync(file).size / 1024) + 300;
      const run = runProcessOnFullDisk(kilobytes, 'keep-batches.ts', JSON.stringify(job.reading()));
      const { output, errors } = await run.end;
      expect(output.trimEnd().split('\n').at(-1), errors).toBe('failed: disk-full');
      const ids = acknowledged(output);
      expect(ids.length).toBeGreaterThan(10);
      const kept = await keptIds();
      expect(ids.filter((id) => !kept.has(id))).toEqual([]);
      expect(await read('PRAGMA integrity_check')).toEqual([['ok']]);
      const [outcome] = await keepReadings({ deviceId: who.deviceId, entries: [job.reading()] });
      expect(outcome!.state).toBe('kept');
    });
  });
}
