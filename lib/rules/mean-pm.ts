import { mean } from '@/lib/maths/statistics/mean';

/** Mean of some lengths to the whole pm; taken off the first, so that metres cost no picometre. One or more. */
export function meanPm(valuesPm: readonly number[]): number {
  const first = valuesPm[0]!;
  return Math.round(first + mean(valuesPm.map((value) => value - first)));
}
