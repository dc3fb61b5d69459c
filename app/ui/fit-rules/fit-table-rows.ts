import { clearanceFigure } from '@/lib/text/fit-words';
import { shownLength, shownSize } from '@/lib/text/shown-size';
import { targetFigures } from '@/lib/text/target-figures';
import { usualResolutionPm } from '@/lib/text/usual-resolution';
import type { FitRulesData, FitRulesPiece } from './fit-rules-data';

export type FitTableRow = {
  internal: string;
  internalSize: string;
  external: string;
  externalSize: string;
  clear: string;
  verdict: string;
};

const nothing = '\u2013';

/** What the two rules show, a row a pair: pairs, then pieces to make, then pieces without a partner. */
export function fitTableRows(data: FitRulesData): FitTableRow[] {
  const stepPm = usualResolutionPm(data.resolutionPm, data.unit);
  const sizeIn = (pieces: readonly FitRulesPiece[], mark: string) => {
    const piece = pieces.find((one) => one.mark === mark);
    if (piece === undefined) return '';
    if (piece.expandedPm <= 0) return shownLength(piece.sizePm, stepPm, data);
    return shownSize({ valuePm: piece.sizePm, expandedPm: piece.expandedPm }, stepPm, data).value;
  };
  const { internal, external, ties, toMake } = data;
  const row = (inner: string, outer: string): FitTableRow => ({
    internal: inner,
    internalSize: sizeIn(internal.pieces, inner),
    external: outer,
    externalSize: sizeIn(external.pieces, outer),
    clear: nothing,
    verdict: 'no partner',
  });
  const paired = new Set([...ties, ...toMake].flatMap((tie) => [tie.internal, tie.external]));
  const alone = (pieces: readonly FitRulesPiece[]) =>
    pieces.map(({ mark }) => mark).filter((mark) => !paired.has(mark));
  return [
    ...ties.map((tie) => ({
      ...row(tie.internal, tie.external),
      clear: clearanceFigure(tie.clearancePm, data, data.stepPm),
      verdict: tie.state,
    })),
    ...toMake.map((piece) => ({
      ...row(piece.internal, piece.external),
      [piece.make === 'internal' ? 'internalSize' : 'externalSize']:
        `to ${targetFigures(piece, stepPm, data).size}`,
      verdict: 'to make',
    })),
    ...alone(internal.pieces).map((mark) => row(mark, nothing)),
    ...alone(external.pieces).map((mark) => row(nothing, mark)),
  ];
}
