import type { FitView } from './fit-view';

/** Probability that every pair of a fit is inside, pairs taken as independent; null where one has no size. */
export function allInside({ pairs }: Pick<FitView, 'pairs'>): number | null {
  return pairs.reduce<number | null>(
    (all, { chance }) => (all === null || chance === null ? null : all * chance),
    1,
  );
}
