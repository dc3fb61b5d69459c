import { samePairMark } from '@/lib/rules/same-pair-mark';
import { refused, type Refused } from './refused';

type Marked = { state: string; mark: string; struckAt?: string | null };

/**
 * What makes a pair's mark nonsense beside the other pairs of its fit that were not struck out, or nothing: two
 * final pairs never carry one mark. A pair that already stood final with its mark, in a book from before this was
 * judged, may still be looked at. `before` is the row as it stands, undefined for a new one.
 */
export function pairMarkFault(
  pair: Marked,
  before: Marked | undefined,
  others: readonly Marked[],
): Refused | undefined {
  if (pair.state !== 'final') return undefined;
  const stood = before !== undefined && before.state === 'final' && !before.struckAt;
  if (stood && samePairMark(before.mark, pair.mark)) return undefined;
  const isTaken = others.some(
    ({ state, mark }) => state === 'final' && samePairMark(mark, pair.mark),
  );
  return isTaken ? refused('pair-mark-taken', 'mark') : undefined;
}
