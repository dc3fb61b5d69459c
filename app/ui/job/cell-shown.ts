import type { Cell } from '@/lib/rules/cells';
import type { FitView } from '@/lib/rules/fit-view';
import type { JobView } from '@/lib/rules/job-view';
import type { Target } from '@/lib/rules/target';
import { guardFactor } from '@/lib/rules/verdict';
import type { Feature } from '@/lib/schema/feature';
import { shownLength, shownSize, type Shown } from '@/lib/text/shown-size';
import type { StripData } from '../strip/strip-data';

/** The resolution in which a cell is shown: of the gauge that told its size, else of the last reading's gauge. */
export function resolutionOf(view: JobView, cell: Cell, feature: Feature): number {
  const gaugeId = cell.size?.gaugeId ?? cell.readings.at(-1)?.gaugeId;
  const gauge = gaugeId === undefined ? undefined : view.cells.gauges.get(gaugeId);
  return gauge?.resolutionPm ?? coarseOf(feature);
}

/** A thousandth of a millimetre, or a ten-thousandth of an inch, where no gauge has been chosen yet. */
function coarseOf(feature: Feature): number {
  return feature.unit === 'mm' ? 1_000_000 : 2_540_000;
}

/** The figure of a cell: its size, else its last counted or held reading, else nothing. */
export function figureOf(view: JobView, cell: Cell, feature: Feature, shown: Shown): string {
  const resolutionPm = resolutionOf(view, cell, feature);
  if (cell.size !== null) return shownSize(cell.size, resolutionPm, shown).value;
  const last = cell.readings.filter((reading) => reading.state !== 'struck').at(-1);
  return last === undefined ? '' : shownLength(last.valuePm, resolutionPm, shown);
}

/** What the size strip of a cell shows; dots are left to the caller who has room for them. */
export function stripOf(view: JobView, cell: Cell, feature: Feature, shown: Shown): StripData {
  const target = targetOf(view, cell.pieceId, feature.id);
  const standardPm = cell.size?.standardPm;
  return {
    unit: shown.unit,
    decimal: shown.decimal,
    resolutionPm: resolutionOf(view, cell, feature),
    lowerPm: cell.limits.lowerPm,
    upperPm: cell.limits.upperPm,
    ...(standardPm === undefined ? {} : { guardPm: guardFactor * standardPm }),
    aimPm: target?.targetPm ?? null,
    live: target !== null && target.nowPm !== null,
    size:
      cell.size === null
        ? null
        : {
            valuePm: cell.size.valuePm,
            expandedPm: cell.size.expandedPm,
            state: cell.verdict?.state ?? null,
          },
  };
}

/** The state a verdict mark shows for a cell. */
export function markStateOf(view: JobView, cell: Cell, feature: Feature) {
  if (cell.readings.some((reading) => reading.state === 'held')) return 'held' as const;
  if (cell.verdict !== null) {
    return cell.verdict.state === 'to cut' ? ('to make' as const) : cell.verdict.state;
  }
  return targetOf(view, cell.pieceId, feature.id) === null
    ? ('none' as const)
    : ('to make' as const);
}

/**
 * The step a target is said in: that of the finer of the two gauges, its partner's and the one the piece itself was
 * read with, where it was.
 */
export function targetStepOf(
  view: JobView,
  { internalFeature, externalFeature }: Pick<FitView, 'internalFeature' | 'externalFeature'>,
  { make, pieceId, partnerId }: Pick<Target, 'make' | 'pieceId' | 'partnerId'>,
): number {
  const [own, other] =
    make === 'external' ? [externalFeature, internalFeature] : [internalFeature, externalFeature];
  const cell = view.cell(pieceId, own.id);
  const partnerPm = resolutionOf(view, view.cell(partnerId, other.id), other);
  const isRead = cell.size !== null || cell.readings.length > 0;
  return isRead ? Math.min(partnerPm, resolutionOf(view, cell, own)) : partnerPm;
}

/** What a feature of a piece is still to be made to; null where it is not. */
export function targetOf(view: JobView, pieceId: string, featureId: string): Target | null {
  for (const { externalFeature, internalFeature, toMake, toBore } of view.fits) {
    const targets =
      externalFeature.id === featureId ? toMake : internalFeature.id === featureId ? toBore : [];
    const target = targets.find((one) => one.pieceId === pieceId);
    if (target !== undefined) return target;
  }
  return null;
}
