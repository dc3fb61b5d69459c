import { alikeSeries } from '@/lib/rules/alike-series';
import { runSeries, type SeriesCorrection, type SeriesReading } from '@/lib/rules/run-series';
import type { RunHead, RunSeriesAnswer } from '@/lib/schema/run-series';
import { store } from './client';
import { findThings } from './find-things';
import { jobSheet } from './job-sheet';

/** What a run is of; null where there is no such run. */
export async function runHead(runId: string): Promise<RunHead | null> {
  const [run] = await findThings('run', { id: runId });
  if (run === undefined) return null;
  const [[feature], alike, events, [job], parts] = await Promise.all([
    findThings('feature', { id: run.featureId }),
    Promise.all(run.alikeIds.map((id) => findThings('feature', { id }))),
    findThings('runEvent', { runId }),
    findThings('job', { id: run.jobId }),
    findThings('part', { jobId: run.jobId }),
  ]);
  const features = [feature!, ...alike.flat().filter(({ struckAt }) => struckAt === null)];
  const partOf = new Map(parts.map((one) => [one.id, one]));
  const part = partOf.get(feature!.partId);
  return {
    run,
    feature: feature!,
    features,
    turns: features.reduce((sum, one) => sum + (partOf.get(one.partId)?.quantity ?? 0), 0),
    events: events.filter(({ struckAt }) => struckAt === null),
    part: { name: part!.name, prefix: part!.prefix, quantity: part!.quantity },
    job: { id: job!.id, name: job!.name, unit: job!.unit },
  };
}

/**
 * Every measured piece of a run with its size, in the order made. Cost: grows with the readings of its
 * feature and the pieces of its part, not with the rest of the job; of several features alike with the job.
 */
export async function findRunSeries(runId: string): Promise<RunSeriesAnswer | null> {
  const head = await runHead(runId);
  if (head === null) return null;
  if (head.features.length > 1) {
    const sheet = await jobSheet(head.job.id);
    return sheet === null ? null : { seq: sheet.seq, ...alikeSeries(sheet, head.run) };
  }
  const { read } = await store();
  const { id: featureId, partId } = head.feature;
  const [[latest], pieces, gauges, readings, corrections, cuts] = await Promise.all([
    read(`SELECT coalesce(max("seq"), 0) FROM "ChangeLog"`),
    read(`SELECT "id", "ordinal" FROM "Piece" WHERE "partId" = $1 AND "struckAt" IS NULL`, [
      partId,
    ]),
    read(`SELECT "id", "resolutionPm" FROM "Gauge"`),
    read(
      `SELECT "id", "seq", "pieceId", "featureId", "gaugeId", "valuePm", "heldAs"
       FROM "Reading" WHERE "jobId" = $1 AND ("featureId" = $2 OR "id" IN
         (SELECT "readingId" FROM "Correction" WHERE "toFeatureId" = $2)) ORDER BY "seq"`,
      [head.job.id, featureId],
    ),
    read(
      `SELECT c."readingId", c."seq", c."kind", c."toPieceId", c."toFeatureId", c."valuePm"
       FROM "Correction" c JOIN "Reading" r ON r."id" = c."readingId"
       WHERE r."jobId" = $1 AND (r."featureId" = $2 OR r."id" IN
         (SELECT "readingId" FROM "Correction" WHERE "toFeatureId" = $2))`,
      [head.job.id, featureId],
    ),
    read(
      `SELECT "pieceId", "lastReadingId" FROM "Cut" WHERE "featureId" = $1 AND "struckAt" IS NULL
       AND "lastReadingId" IS NOT NULL ORDER BY "ordinal"`,
      [featureId],
    ),
  ]);
  const series = runSeries({
    featureId,
    pieces: (pieces as [string, number][]).map(([id, ordinal]) => ({ id, ordinal })),
    readings: (readings as ReadingRow[]).map(
      ([id, seq, pieceId, feature, gaugeId, valuePm, heldAs]) => ({
        id,
        seq,
        pieceId,
        featureId: feature,
        gaugeId,
        valuePm,
        heldAs,
      }),
    ),
    corrections: (corrections as CorrectionRow[]).map(
      ([readingId, seq, kind, toPieceId, toFeatureId, valuePm]) => ({
        readingId,
        seq,
        kind,
        toPieceId,
        toFeatureId,
        valuePm,
      }),
    ),
    cutAfter: new Map(cuts as [string, string][]),
    gauges: new Map(
      (gauges as [string, number][]).map(([id, resolutionPm]) => [id, { id, resolutionPm }]),
    ),
  });
  return { seq: latest![0] as number, ...series, marks: null };
}

type ReadingRow = [
  id: string,
  seq: number,
  pieceId: string,
  featureId: string,
  gaugeId: string,
  valuePm: number,
  heldAs: SeriesReading['heldAs'],
];
type CorrectionRow = [
  readingId: string,
  seq: number,
  kind: SeriesCorrection['kind'],
  toPieceId: string | null,
  toFeatureId: string | null,
  valuePm: number | null,
];
