import type { FitView } from '@/lib/rules/fit-view';
import { isRecord } from '@/lib/rules/pair-row';
import type { Pair } from '@/lib/schema/fit';
import { paperPairWords } from '@/lib/text/paper-words';
import { changeWords, flagWords } from '@/lib/text/pair-flag-words';
import { undoneWords } from '@/lib/text/pair-record-words';
import type { Shown } from '@/lib/text/shown-size';

type Names = {
  mark: (id: string) => string;
  person: (id: string | null) => string | null;
  gauge: (id: string) => string;
};

/** What stands under the printed table of pairs: why a final pair is flagged, and those that were undone. */
export function paperNotes(
  { fit, pairs }: Pick<FitView, 'fit' | 'pairs'>,
  kept: readonly Pair[],
  stepPm: number,
  shown: Shown,
  names: Names,
  dayOf: (instant: string) => string,
): { flagged: string[]; undone: string[] } {
  const marksOf = (pair: { internalPieceId: string; externalPieceId: string }) => ({
    internal: names.mark(pair.internalPieceId),
    external: names.mark(pair.externalPieceId),
  });
  const flagged = pairs.flatMap((pair) => {
    if (pair.flag === null) return [];
    const marks = marksOf(pair);
    const of = { ...marks, piece: names.mark, gauge: names.gauge };
    const why = pair.flag.changes.map((change) => changeWords(change, of, shown));
    const says = [flagWords(pair.flag.was, pair.flag.now, stepPm, shown), ...why].join(' ');
    return [paperPairWords(marks, says)];
  });
  const undone = kept.flatMap((pair) => {
    if (pair.fitId !== fit.id || pair.struckAt !== null || !isRecord(pair)) return [];
    const by = names.person(pair.personId);
    const words = undoneWords({ ...pair, by, reason: pair.reason ?? '' }, stepPm, shown);
    const day = pair.decidedAt === null ? '' : `${dayOf(pair.decidedAt)}, `;
    return [paperPairWords(marksOf(pair), `${day}${words}`)];
  });
  return { flagged, undone };
}
