import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import type { JobView } from '@/lib/rules/job-view';
import type { Feature } from '@/lib/schema/feature';
import { clearanceStep } from '@/lib/text/fit-words';
import type { LengthUnit } from '@/lib/units/picometres';
import { resolutionOf } from '../job/cell-shown';

/**
 * The step clearances of a fit are known in, pm: that of the finer of the two gauges its first measured bore and
 * shaft were read with.
 */
export function stepOf(view: JobView, fit: FitView): number {
  const steps = [
    ...stepOfSide(view, fit.internals, fit.internalFeature),
    ...stepOfSide(view, fit.externals, fit.externalFeature),
  ];
  return steps.length === 0 ? 1_000_000 : Math.min(...steps);
}

/** The step the clearances of a fit are counted in where the figures stand alone, pm. */
export function clearanceStepOf(view: JobView, fit: FitView, unit: LengthUnit): number {
  return clearanceStep(fit.fit, unit, stepOf(view, fit));
}

function stepOfSide(view: JobView, pieces: readonly FitPiece[], feature: Feature): number[] {
  const first = pieces.find(({ size }) => size !== null);
  return first === undefined
    ? []
    : [resolutionOf(view, view.cell(first.piece.id, feature.id), feature)];
}
