import { samplingGap, type SamplingGap } from '@/lib/maths/control/sampling-gap';

/** Without two adjustments, two samples' worth of pieces that kept by themselves say something. */
const leastOpen = 12;

/**
 * How often to sample by what is known of how long the machine keeps: the pieces from one adjustment to the
 * next, and those since the last one, which are at least so many. Null while that says nothing.
 */
export function steadyGap(between: readonly number[], sinceLast: number): SamplingGap | null {
  const sum = between.reduce((total, pieces) => total + pieces, 0);
  // A stretch that is still going on can only be longer: it counts once it is longer than the others.
  const counts =
    sinceLast >= leastOpen && (between.length === 0 || sinceLast * between.length > sum);
  const gaps = counts ? [...between, sinceLast] : between;
  if (gaps.length === 0) return null;
  let at = 0;
  return samplingGap([0, ...gaps.map((pieces) => (at += pieces))]);
}
