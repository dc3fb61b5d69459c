import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import type { JobView } from '@/lib/rules/job-view';
import { drawnLimits, isOpen } from '@/lib/rules/feature-limits';
import { targetPair } from '@/lib/rules/target-pair';
import type { Shown } from '@/lib/text/shown-size';
import type { Feature } from '@/lib/schema/feature';
import { resolutionOf } from '../job/cell-shown';
import { clearanceStepOf } from './step-of';
import { fitRulesLayout } from '../fit-rules/fit-rules-layout';
import type { FitRulesData } from '../fit-rules/fit-rules-data';

/** What the two rules of a fit show: every measured piece on its zone, the pairs as ties, what is to make. */
export function fitRulesOf(view: JobView, fit: FitView, shown: Shown): FitRulesData {
  const { fit: wanted, internals, externals, internalFeature, externalFeature } = fit;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const nameOf = (feature: Feature) =>
    view.parts.find(({ part }) => part.id === feature.partId)?.part.name ?? '';
  const side = (feature: Feature, pieces: readonly FitPiece[]) => ({
    title: nameOf(feature),
    feature: feature.name.toLowerCase(),
    ...drawnLimits(feature),
    pieces: pieces.flatMap(({ piece, size, stillToCut }) =>
      size === null || stillToCut
        ? []
        : [{ mark: piece.mark, sizePm: size.valuePm, expandedPm: size.expandedPm }],
    ),
  });
  const first = internals.find(({ size }) => size !== null)?.piece.id ?? internals[0]?.piece.id;
  const cell = first === undefined ? undefined : view.cell(first, internalFeature.id);
  return {
    unit: shown.unit,
    decimal: shown.decimal,
    resolutionPm: cell === undefined ? 1_000_000 : resolutionOf(view, cell, internalFeature),
    aimPm: wanted.aimPm,
    stepPm: clearanceStepOf(view, fit, shown.unit),
    internal: side(internalFeature, internals),
    external: { ...side(externalFeature, externals), ...externalZone() },
    ties: fit.pairs.map((pair) => ({
      internal: markOf(pair.internalPieceId),
      external: markOf(pair.externalPieceId),
      clearancePm: pair.clearancePm,
      state: pair.verdict.state,
    })),
    toMake: [...fit.toMake, ...fit.toBore].map((target) => {
      const { internalPieceId, externalPieceId } = targetPair(target);
      const { make, targetPm, noLargerPm, noSmallerPm } = target;
      return {
        internal: markOf(internalPieceId),
        external: markOf(externalPieceId),
        make,
        targetPm,
        noLargerPm,
        noSmallerPm,
      };
    }),
  };

  /** Where an external feature may lie at all: as drawn, else what the drawn bores leave it. */
  function externalZone() {
    const drawn = drawnLimits(externalFeature);
    if (!isOpen(drawn)) return drawn;
    const { lowerPm, upperPm } = drawnLimits(internalFeature);
    return {
      lowerPm: lowerPm === null ? null : lowerPm - wanted.maxPm,
      upperPm: upperPm === null ? null : upperPm - wanted.minPm,
    };
  }
}

/** How many times full size the rules are drawn on a desk, for the title block. */
export function timesFullSizeOf(data: FitRulesData): number {
  return fitRulesLayout(data, 1230).timesFullSize;
}
