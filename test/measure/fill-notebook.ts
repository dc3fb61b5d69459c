import { setTimeout as wait } from 'node:timers/promises';
import { findThings } from '@/lib/store/find-things';
import { startJob } from '@/lib/store/start-job';
import { store } from '@/lib/store/client';
import { uuidv7 } from '@/lib/store/uuid';
import { jobStart, who } from '../store/a-job';

const jobsCount = 50;
const rowsAtOnce = 20_000;
const settleMs = 3000;

/** Gives the notebook other jobs with readings until it holds `total` readings in all. */
export async function fillNotebook(total: number, gaugeId: string): Promise<void> {
  const { engine, read, write } = await store();
  const pieces: { jobId: string; pieceId: string; featureId: string }[] = [];
  for (let i = 0; i < jobsCount; i += 1) {
    const start = jobStart(4);
    await startJob(start, who);
    const [piece] = await findThings('piece', { jobId: start.job.id });
    const feature = start.features.find(({ partId }) => partId === piece!.partId)!;
    pieces.push({ jobId: start.job.id, pieceId: piece!.id, featureId: feature.id });
  }
  const count = async () => (await read('SELECT count(*) FROM "Reading"'))[0]![0] as number;
  const series =
    engine === 'sqlite'
      ? 'WITH RECURSIVE s(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM s WHERE n < $1)'
      : 'WITH s(n) AS (SELECT generate_series(1, $1::int))';
  for (let round = 0, lacking = total - (await count()); lacking > 0; round += 1) {
    const { jobId, pieceId, featureId } = pieces[round % jobsCount]!;
    const rows = Math.min(rowsAtOnce, lacking);
    // Ids rise as those of devices do: the head of a fresh one, and a running number for its tail.
    const head = uuidv7().slice(0, 24);
    const tail = engine === 'sqlite' ? `printf('%012d', n)` : `lpad(n::text, 12, '0')`;
    await write(
      `${series} INSERT INTO "Reading" ("id", "jobId", "pieceId", "featureId", "gaugeId", "station",
         "direction", "text", "unit", "valuePm", "resolutionPm", "deviceTime", "receivedAt", "deviceId", "deviceSeq")
       SELECT '${head}' || ${tail}, '${jobId}', '${pieceId}', '${featureId}', '${gaugeId}',
         'mouth', 'along', '18.003', 'mm', 18003000000, 1000000, '2026-11-25T09:00:00+01:00',
         '2026-11-25T08:00:00.000Z', '${head}', n FROM s`,
      [rows],
    );
    lacking -= rows;
  }
  // What the filling left to be done in the background is done before anything is measured.
  if (engine === 'sqlite') await read('PRAGMA wal_checkpoint(TRUNCATE)');
  else for (const statement of ['VACUUM ANALYZE', 'CHECKPOINT']) await write(statement);
  await wait(settleMs);
}
