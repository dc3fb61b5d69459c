import type { Fit } from '@/lib/schema/fit';
import type { Gauge } from '@/lib/schema/gauge';
import { cellKey, type Cells } from './cells';
import type { Clearance, FitPiece } from './fit-view';
import type { PairNow } from './pair-flag';
import { pairSide } from './pair-side';
import { pieceFate } from './piece-fate';
import type { Standing } from './standing';

/**
 * Looks up what a pair of a fit stands on at the moment. Readings are found by id among all cells; that list
 * is made once, and only when a reading is missing where it was.
 */
export function pairNow(fit: Fit, cells: Cells, gauges: readonly Gauge[]) {
  const byId = new Map(gauges.map((gauge) => [gauge.id, gauge]));
  let found: Map<string, Standing & { isBeforeCut: boolean }> | null = null;
  const reading = (id: string) => (found ??= allReadings(cells)).get(id);
  const sideOf = ({ piece, size }: FitPiece, featureId: string) =>
    pairSide(size, cells.byKey.get(cellKey(piece.id, featureId)), byId);

  return (clearance: Clearance | null, internal: FitPiece, external: FitPiece): PairNow => ({
    figure:
      clearance === null
        ? null
        : { clearancePm: clearance.clearancePm, expandedPm: Math.round(clearance.expandedPm) },
    internal: sideOf(internal, fit.internalFeatureId),
    external: sideOf(external, fit.externalFeatureId),
    fate: { internal: pieceFate(internal.piece), external: pieceFate(external.piece) },
    reading,
  });
}

function allReadings({ byKey }: Cells): Map<string, Standing & { isBeforeCut: boolean }> {
  const all = new Map<string, Standing & { isBeforeCut: boolean }>();
  for (const { readings, earlier } of byKey.values()) {
    for (const one of readings) all.set(one.id, { ...one, isBeforeCut: false });
    for (const one of earlier) all.set(one.id, { ...one, isBeforeCut: true });
  }
  return all;
}
