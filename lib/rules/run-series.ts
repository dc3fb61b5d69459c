import { standing } from './standing';
import { toldValue } from './told-value';

/** One place a run is measured at: a feature, with the pieces made of it in order. */
export type SeriesFacts = {
  featureId: string;
  pieces: readonly { id: string; ordinal: number }[];
  /** Of this feature, or moved to it. */
  readings: Parameters<typeof standing>[0];
  corrections: Parameters<typeof standing>[1];
  /** The last reading before the last cut, by piece. */
  cutAfter: ReadonlyMap<string, string>;
  gauges: ReadonlyMap<string, { id: string; resolutionPm: number }>;
};

/** Sizes of a run as two columns, in the order made; pieces nobody measured have no row. */
export type RunSeries = { ordinals: number[]; sizesPm: number[] };

/**
 * The size of every measured piece of a run: the same value `sizeOf` gives, without its doubt, so that a very
 * long run can be drawn. Cost: O(readings + corrections + pieces), plus the sorts.
 */
export function runSeries(facts: SeriesFacts): RunSeries {
  const { featureId, pieces, cutAfter, gauges } = facts;
  const seqOf = new Map<string, number>();
  for (const before of cutAfter.values()) seqOf.set(before, 0);
  if (seqOf.size > 0) {
    for (const { id, seq } of facts.readings) if (seqOf.has(id)) seqOf.set(id, seq);
  }
  const ofPiece = new Map<string, { valuePm: number; gaugeId: string }[]>();
  for (const reading of standing(facts.readings, facts.corrections)) {
    if (reading.state !== 'counted' || reading.featureId !== featureId) continue;
    const before = cutAfter.get(reading.pieceId);
    if (before !== undefined && reading.seq <= (seqOf.get(before) ?? 0)) continue;
    const known = ofPiece.get(reading.pieceId);
    if (known === undefined) ofPiece.set(reading.pieceId, [reading]);
    else known.push(reading);
  }
  const series: RunSeries = { ordinals: [], sizesPm: [] };
  for (const { id, ordinal } of [...pieces].sort((a, b) => a.ordinal - b.ordinal)) {
    const told = toldValue(ofPiece.get(id) ?? [], gauges);
    if (told === null) continue;
    series.ordinals.push(ordinal);
    series.sizesPm.push(told.valuePm);
  }
  return series;
}
