import { decimalsForUncertainty } from '@/lib/units/decimals-for-uncertainty';
import { formatLength } from '@/lib/units/format-length';
import { capital } from './capital';
import type { Shown } from './shown-size';
import { turnMark } from './turn-mark';
import { turnWord } from './turn-word';

/** What is known of the drift of a run, as far as words need it. */
export type DriftFacts = {
  features: readonly { partId: string }[];
  points: readonly unknown[];
  piecesLeft: number | null;
  pieces: readonly { mark: string; ordinal: number }[];
  nextPiece: { mark: string; ordinal: number } | null;
  /** Why no offset is put forward where something has to be done; null where one is. */
  noOffset: 'less than a division' | 'one limit' | 'no room' | null;
  drift:
    | {
        kind: 'line';
        slopeMmPerPiece: number;
        pieces: number;
        ahead:
          | { kind: 'no-drift' }
          | { kind: 'no-limit' }
          | {
              kind: 'meets';
              side: 'lower' | 'upper';
              crossing: { first: number; best: number; last: number };
            };
      }
    | { kind: 'too-little'; reason: 'too-few-pieces' | 'too-few-sizes'; pieces: number }
    | null;
};

const pmPerMm = 1e9;

/** The slope of a drift per piece, to four places in mm or five in inches: 0.0019; finer where it is less. */
export function slopeFigure(mmPerPiece: number, { unit, decimal }: Shown): string {
  const pm = Math.round(Math.abs(mmPerPiece) * pmPerMm);
  const usual = unit === 'mm' ? 4 : 5;
  const decimals = pm === 0 ? usual : Math.max(usual, decimalsForUncertainty(pm, unit, 2));
  return formatLength(pm, { unit, decimals: Math.min(usual + 3, decimals), decimal });
}

/** A run in words: a line for the board, and a title with a sentence for its own sheet. */
export function driftWords(
  facts: DriftFacts,
  shown: Shown,
): { summary: string; title: string; says: string } {
  const { drift, nextPiece, piecesLeft } = facts;
  if (facts.points.length === 0) {
    return {
      summary: 'nothing measured yet',
      title: 'Nothing measured yet',
      says: 'Measure the first piece; the chart draws itself as you go.',
    };
  }
  if (drift === null || drift.kind === 'too-little') return tooLittle(facts);
  const grows = drift.slopeMmPerPiece > 0 ? 'growing' : 'shrinking';
  const slope = `${grows} ${slopeFigure(drift.slopeMmPerPiece, shown)} a ${turnWord(facts.features)}`;
  if (drift.ahead.kind === 'no-drift') {
    return {
      summary: 'no drift that can be told from scatter',
      title: 'Steady',
      says: 'No drift that can be told from the scatter of the pieces. Leave the machine alone.',
    };
  }
  if (drift.ahead.kind === 'no-limit' || piecesLeft === null) {
    return { summary: slope, title: capital(slope), says: 'No limit lies that way.' };
  }
  if (nextPiece === null) {
    return {
      summary: slope,
      title: 'The batch is made',
      says: `It was ${slope}. Put the machine back before the next batch.`,
    };
  }
  const said = advice(facts, piecesLeft, nextPiece);
  return {
    summary: `${slope}; ${piecesLeft === 0 ? 'act now' : `${piecesLeft} more before the limit`}`,
    title: said.title,
    says: `${capital(slope)}; ${lastGoodWords(facts, drift.ahead.crossing)} ${said.says}`,
  };
}

/** Which piece is the last inside by the line, and between which ones it may be, as the chart draws it. */
function lastGoodWords(
  { pieces }: DriftFacts,
  { first, best, last }: { first: number; best: number; last: number },
): string {
  const markOf = (at: number) => turnMark(pieces, Math.max(0, Math.floor(at)));
  if (!Number.isFinite(last)) {
    return `about ${markOf(best)} is the last good one, ${markOf(first)} at the earliest.`;
  }
  const range =
    markOf(first) === markOf(last) ? '' : ` (between ${markOf(first)} and ${markOf(last)})`;
  return `about ${markOf(best)} is the last good one${range}.`;
}

function advice(
  { pieces, noOffset }: DriftFacts,
  left: number,
  next: { mark: string; ordinal: number },
): { title: string; says: string } {
  const markOf = (ordinal: number) => pieces.find((piece) => piece.ordinal === ordinal)?.mark;
  const last = markOf(next.ordinal + left - 1);
  const after = markOf(next.ordinal + left);
  if (left === 0) {
    return {
      title: 'Act before the next piece',
      says: `${next.mark} may not stay inside. ${actWords('Turn', noOffset)}`,
    };
  }
  if (last === undefined || after === undefined) {
    return {
      title: 'The batch should stay inside',
      says: `${next.mark} to ${pieces.at(-1)?.mark ?? 'the last'} should stay inside. Measure on.`,
    };
  }
  const range = left === 1 ? `${next.mark} should` : `${next.mark} to ${last} should`;
  return {
    title: `${capital(countWord(left))} more, then act`,
    says: `${range} stay inside. ${after} may not. After ${last}, ${actWords('turn', noOffset)}`,
  };
}

/** What to do about a drift; the figures of an offset stand under it where there is one. */
function actWords(turn: string, noOffset: DriftFacts['noOffset']): string {
  return noOffset === null
    ? `${turn} the insert, or put this in:`
    : `${turn} the insert. ${noOffsetWords[noOffset]}`;
}

const noOffsetWords: Record<NonNullable<DriftFacts['noOffset']>, string> = {
  'less than a division': 'An offset would be less than one division of the dial.',
  'one limit': 'There is no second limit to begin anew at.',
  'no room': 'The pieces scatter too much for an offset to begin anew between these limits.',
};

function tooLittle({ points, drift }: DriftFacts): {
  summary: string;
  title: string;
  says: string;
} {
  if (drift !== null && drift.kind === 'too-little' && drift.reason === 'too-few-sizes') {
    return {
      summary: `${points.length} measured, hardly any difference`,
      title: 'Hardly any difference',
      says: 'Fewer than three different sizes since the last event: the gauge is too coarse to show a drift. Here are the dots.',
    };
  }
  const since = drift === null ? 0 : drift.pieces;
  const count =
    since === points.length ? countWord(since) : `${countWord(since)} since the last event`;
  return {
    summary: `${points.length} measured`,
    title: 'Too few to draw a line',
    says: `${capital(count)}: too few to draw a line through. Here are the dots.`,
  };
}

/** Small numbers as a person says them. */
export function countWord(count: number): string {
  const words = ['none', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
  return words[count] ?? String(count);
}
