import type { Correction, Reading } from '@/lib/schema/reading';
import { standing } from './standing';
import { toldValue } from './told-value';

/** As much of a reading as its size needs. */
export type SeriesReading = Pick<
  Reading,
  'id' | 'seq' | 'pieceId' | 'featureId' | 'gaugeId' | 'valuePm' | 'heldAs'
>;

/** As much of a correction as moves a size. */
export type SeriesCorrection = Pick<
  Correction,
  'readingId' | 'seq' | 'kind' | 'toPieceId' | 'toFeatureId' | 'valuePm'
>;

/** One feature of a run, with the pieces made of it. */
export type SeriesFacts = {
  featureId: string;
  pieces: readonly { id: string; ordinal: number }[];
  /** Of this feature, or moved to it; in the order of the book. */
  readings: readonly SeriesReading[];
  corrections: readonly SeriesCorrection[];
  /** The last reading before the last cut, by piece. */
  cutAfter: ReadonlyMap<string, string>;
  gauges: ReadonlyMap<string, { id: string; resolutionPm: number }>;
};

/** Sizes of a run as two columns, in the order made; pieces nobody measured have no row. */
export type RunSeries = { ordinals: number[]; sizesPm: number[] };

/**
 * The size of every measured piece of a run: the same value `sizeOf` gives, without its doubt, so that a very
 * long run can be drawn. Cost: O(readings + corrections + pieces), plus a sort of the pieces.
 */
export function runSeries(facts: SeriesFacts): RunSeries {
  const { featureId, pieces, cutAfter, gauges } = facts;
  const cutSeq = seqOfCuts(facts);
  const corrections = byReading(facts.corrections);
  const ofPiece = new Map<string, { valuePm: number; gaugeId: string }[]>();
  for (const given of facts.readings) {
    const said = corrections.get(given.id);
    const reading = said === undefined ? given : corrected(given, said);
    if (reading === null || reading.featureId !== featureId) continue;
    if (said === undefined && reading.heldAs !== null) continue;
    if (cutAfter.has(reading.pieceId) && reading.seq <= cutSeq.get(reading.pieceId)!) continue;
    const known = ofPiece.get(reading.pieceId);
    if (known === undefined) ofPiece.set(reading.pieceId, [reading]);
    else known.push(reading);
  }
  const series: RunSeries = { ordinals: [], sizesPm: [] };
  for (const { id, ordinal } of [...pieces].sort((a, b) => a.ordinal - b.ordinal)) {
    const readings = ofPiece.get(id);
    const told = readings === undefined ? null : toldValue(readings, gauges);
    if (told === null) continue;
    series.ordinals.push(ordinal);
    series.sizesPm.push(told.valuePm);
  }
  return series;
}

/** The reading as its corrections leave it; null where it does not count. */
function corrected(
  reading: SeriesReading,
  said: readonly SeriesCorrection[],
): SeriesReading | null {
  const [found] = standing(
    [{ ...blankReading, ...reading }],
    said.map((one) => ({ ...blankCorrection, ...one })),
  );
  return found === undefined || found.state !== 'counted' ? null : found;
}

function byReading(corrections: readonly SeriesCorrection[]): Map<string, SeriesCorrection[]> {
  const found = new Map<string, SeriesCorrection[]>();
  for (const correction of corrections) {
    const known = found.get(correction.readingId);
    if (known === undefined) found.set(correction.readingId, [correction]);
    else known.push(correction);
  }
  return found;
}

/** By piece, the number in the book of the last reading before its last cut; 0 where that is not here. */
function seqOfCuts({ cutAfter, readings }: SeriesFacts): Map<string, number> {
  const found = new Map([...cutAfter.keys()].map((pieceId) => [pieceId, 0]));
  if (found.size === 0) return found;
  const pieceOf = new Map([...cutAfter].map(([pieceId, readingId]) => [readingId, pieceId]));
  for (const { id, seq } of readings) {
    const pieceId = pieceOf.get(id);
    if (pieceId !== undefined) found.set(pieceId, seq);
  }
  return found;
}

/** What a size does not depend on. */
const blankReading = {
  personId: null,
  station: '',
  direction: '',
  text: '',
  unit: 'mm' as const,
  resolutionPm: 1,
  temperatureMilliC: null,
  deviceTime: '',
  deviceSeq: 0,
};
const blankCorrection = {
  id: '',
  reason: '',
  toStation: null,
  toDirection: null,
  text: null,
  unit: null,
  resolutionPm: null,
  personId: null,
  deviceTime: '',
  deviceSeq: 0,
};
