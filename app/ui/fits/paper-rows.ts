import type { ChosenPair, FitPiece, FitView } from '@/lib/rules/fit-view';
import { targetPair } from '@/lib/rules/target-pair';
import { chanceWords } from '@/lib/text/chance-words';
import { clearanceVerdict } from '@/lib/text/matrix-words';
import { clearWords } from '@/lib/text/clear-words';
import { paperMakeWords } from '@/lib/text/paper-words';
import { shownSize, type Shown } from '@/lib/text/shown-size';
import { targetFigures } from '@/lib/text/target-figures';
import type { VerdictSide, VerdictState } from '@/lib/text/verdict';

/** One row of the printed table; empty where there is nothing to say, room to write where something is to make. */
export type PaperRow = {
  set: string;
  internal: string;
  internalSize: string;
  external: string;
  externalSize: string;
  clear: string;
  mark: { state: VerdictState; side: VerdictSide };
  verdict: string;
  chance: string;
  remark: string;
};

/**
 * What the printed sheet of a fit says, a row a pair: pairs first, then pieces to make, then those without a
 * partner and those left out. `dayOf` says the day of an instant in the reader's own time.
 */
export function paperRows(
  fit: FitView,
  stepPm: number,
  shown: Shown,
  names: { mark: (id: string) => string; person: (id: string | null) => string | null },
  dayOf: (instant: string) => string,
): PaperRow[] {
  const sizeOf = (one: FitPiece | undefined) => {
    if (one === undefined || one.size === null) return '';
    const { value, plusMinus } = shownSize(one.size, stepPm, shown);
    return `${value} \u00b1 ${plusMinus}`;
  };
  const blank = { set: '', clear: '', verdict: '', chance: '', remark: '' };
  const row = (internalId: string | null, externalId: string | null) => ({
    ...blank,
    internal: internalId === null ? '' : names.mark(internalId),
    internalSize: internalId === null ? '' : sizeOf(fit.every.get(internalId)),
    external: externalId === null ? '' : names.mark(externalId),
    externalSize: externalId === null ? '' : sizeOf(fit.every.get(externalId)),
    mark: { state: 'none', side: null } as PaperRow['mark'],
  });

  const pairs = fit.pairs.map((pair): PaperRow => {
    const { verdict, chance } = pair;
    const size = {
      valuePm: Math.abs(pair.clearancePm),
      expandedPm: Math.max(1, pair.expandedPm),
    };
    const clear = shownSize(size, stepPm, shown);
    return {
      ...row(pair.internalPieceId, pair.externalPieceId),
      set: pair.pair?.mark ?? '',
      clear: `${clear.value} \u00b1 ${clear.plusMinus}${pair.clearancePm < 0 ? ' tight' : ''}`,
      mark: { state: verdict.state, side: verdict.side },
      verdict: clearanceVerdict(verdict, stepPm, shown),
      // Its column is narrow: the sign stays with its figure.
      chance: chance === null ? '' : chanceWords(chance, shown.decimal).replace(' %', '\u00a0%'),
      remark: remarkOf(pair),
    };
  });
  const toMake = [...fit.toMake, ...fit.toBore].map((target): PaperRow => {
    const { internalPieceId, externalPieceId } = targetPair(target);
    const to = targetFigures(target, stepPm, shown).size;
    return {
      ...row(internalPieceId, externalPieceId),
      [target.make === 'external' ? 'externalSize' : 'internalSize']: '',
      mark: { state: 'to make', side: null },
      remark: paperMakeWords(names.mark(target.pieceId), to),
    };
  });
  const said = new Set([
    ...fit.pairs.flatMap((pair) => [pair.internalPieceId, pair.externalPieceId]),
    ...[...fit.toMake, ...fit.toBore].flatMap((target) => [target.partnerId, target.pieceId]),
  ]);
  const alone = (list: readonly FitPiece[], isInternal: boolean) =>
    list
      .filter(({ piece }) => !said.has(piece.id))
      .map(({ piece, size, leftOut }): PaperRow => ({
        ...(isInternal ? row(piece.id, null) : row(null, piece.id)),
        remark: leftOut ? 'left out' : size === null ? 'not measured' : 'no partner',
      }));
  return [...pairs, ...toMake, ...alone(fit.internals, true), ...alone(fit.externals, false)];

  function remarkOf({ state, pair, flag }: ChosenPair): string {
    if (state === 'locked') return 'kept together';
    if (state !== 'final' || pair === null) return '';
    const by = names.person(pair.personId);
    const when = pair.decidedAt === null ? null : dayOf(pair.decidedAt);
    const made =
      flag === null || pair.clearancePm === null
        ? null
        : `changed since: made with ${clearWords(pair.clearancePm, stepPm, shown)}`;
    return ['final', by, when, made].filter((word) => word !== null).join(', ');
  }
}
