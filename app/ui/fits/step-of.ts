import type { FitView } from '@/lib/rules/fit-view';
import type { JobView } from '@/lib/rules/job-view';
import { resolutionOf } from '../job/cell-shown';

/** The step clearances of a fit are said to, pm: that of the gauge its first measured bore was read with. */
export function stepOf(view: JobView, { internals, internalFeature }: FitView): number {
  const first = internals.find(({ size }) => size !== null)?.piece.id ?? internals[0]?.piece.id;
  if (first === undefined) return 1_000_000;
  return resolutionOf(view, view.cell(first, internalFeature.id), internalFeature);
}
