import { mean } from '@/lib/maths/statistics/mean';
import { meanInterval } from '@/lib/maths/statistics/mean-interval';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import type { RunView } from './run-view';
import { guardFactor } from './verdict';

/** The offset that brings a steady run back to the middle of its limits. */
export type SteadyOffset = {
  onDiameterPm: number;
  onDialPm: number;
  /** Where the pieces stand now, and where they come out after it, pm as charted. */
  meanPm: number;
  thenPm: number;
  /** The limit that three scatters do not stay clear of. */
  side: 'top' | 'bottom';
};

const confidence = 0.95;

/**
 * The offset of a run that does not drift and yet is not clear of a limit; null is "leave it alone".
 *
 * The mean of the pieces since the last event is moved to the middle of the limits, and only if three
 * scatters and the guard of one size do not fit between that mean and a limit, and the mean can be told
 * from the middle at 95 %. Never from the last piece. Whole divisions of the dial, never one more than
 * asked. The three scatters are common practice, no source; the guard is that of ISO 14253-1.
 */
export function steadyOffset(view: RunView): SteadyOffset | null {
  const { drift, limits, run, points } = view;
  const { lowerPm, upperPm } = limits;
  if (drift?.kind !== 'line' || drift.ahead.kind !== 'no-drift') return null;
  if (lowerPm === null || upperPm === null) return null;
  const since = points.filter(({ earlier }) => !earlier);
  const fromPm = since[0]!.valuePm;
  const off = since.map(({ valuePm }) => valuePm - fromPm);
  const sd = standardDeviation(off);
  const middlePm = (lowerPm + upperPm) / 2;
  const meanPm = fromPm + mean(off);
  const marginPm = 3 * sd + guardFactor * since.at(-1)!.size.standardPm;
  const side = meanPm > middlePm ? 'top' : 'bottom';
  const clearPm = side === 'top' ? upperPm - meanPm : meanPm - lowerPm;
  if (clearPm >= marginPm) return null;
  const { low, high } = meanInterval({ mean: meanPm, sd, n: since.length }, confidence);
  if (low <= middlePm && middlePm <= high) return null;
  const perDial = run.dial === 'radius' ? 2 : 1;
  const divisions = Math.trunc((middlePm - meanPm) / perDial / run.divisionPm);
  if (divisions === 0) return null;
  const onDialPm = divisions * run.divisionPm;
  const onDiameterPm = perDial * onDialPm;
  return { onDialPm, onDiameterPm, meanPm, thenPm: Math.round(meanPm + onDiameterPm), side };
}
