import { jobStart, newGauge, who } from '../store/a-job';
import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import { startJob } from '@/lib/store/start-job';
import { store } from '@/lib/store/client';
import { uuidv7 } from '@/lib/store/uuid';

/** Where a long run has its one size that is far out: the smallest in any picture that does not lie. */
export const farOutAt = (pieces: number) => Math.floor(pieces * 0.618);

/**
 * A run of so many measured pieces, written straight into the open notebook: 18.000 to 18.018, drifting up
 * from 18.004 to 18.014 over 500 pieces and back, with scatter that is the same each time, and one at 17.990.
 */
export async function fillLongRun(pieces: number): Promise<{ jobId: string; runId: string }> {
  const gauge = newGauge();
  await makeThing('gauge', gauge, who);
  const start = jobStart(1);
  await startJob(start, who);
  const jobId = start.job.id;
  const { id: runId, featureId } = start.runs[0]!;
  const { partId } = start.features.find(({ id }) => id === featureId)!;
  const [first] = await findThings('piece', { jobId }).then((all) =>
    all.filter((piece) => piece.partId === partId),
  );
  const { engine, write } = await store();
  const series =
    engine === 'sqlite'
      ? 'WITH RECURSIVE s(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM s WHERE n < $1)'
      : 'WITH s(n) AS (SELECT generate_series(1, $1::int))';
  const head = uuidv7().slice(0, 24);
  const tail = engine === 'sqlite' ? `printf('%012d', n)` : `lpad(n::text, 12, '0')`;
  await write(
    `${series} INSERT INTO "Piece" ("id", "version", "createdAt", "jobId", "partId", "ordinal", "mark", "note")
     SELECT '${head}' || ${tail}, 1, '2026-11-25T08:00:00.000Z', '${jobId}', '${partId}', n, 'L' || n, ''
     FROM s WHERE n > 1`,
    [pieces],
  );
  const pieceId = `CASE WHEN n = 1 THEN '${first!.id}' ELSE '${head}' || ${tail} END`;
  const sizePm = `CASE WHEN n = ${farOutAt(pieces)} THEN 17990000000
    ELSE 18004000000 + (n % 500) * 20000 + ((n * 7919) % 5 - 2) * 500000 END`;
  const device = uuidv7();
  await write(
    `${series} INSERT INTO "Reading" ("id", "jobId", "pieceId", "featureId", "gaugeId", "station",
       "direction", "text", "unit", "valuePm", "resolutionPm", "deviceTime", "receivedAt", "deviceId", "deviceSeq")
     SELECT '${uuidv7().slice(0, 24)}' || ${tail}, '${jobId}', ${pieceId}, '${featureId}', '${gauge.id}',
       'mouth', 'along', '18.004', 'mm', ${sizePm}, 1000000, '2026-11-25T09:00:00+01:00',
       '2026-11-25T08:00:00.000Z', '${device}', n FROM s`,
    [pieces],
  );
  return { jobId, runId };
}
