import type { SlipKind } from '@/lib/schema/reading';
import { chartStepPm } from './chart-step';
import { slopeFigure } from './drift-words';
import { shownLength, type Shown } from './shown-size';

const slips: Record<SlipKind, string> = {
  'thimble turn': 'one turn of the thimble',
  'sleeve line': 'one line of the sleeve',
  'needle turn': 'one turn of the needle',
  'wrong frame': 'a frame of another size',
  'other unit': 'the other unit',
  'decimal point': 'the point in the wrong place',
  'swapped figures': 'two figures swapped',
  'one figure': 'one figure wrong',
  'half or double': 'the radius for the diameter',
  'wrong feature': 'another feature',
  'far off': 'something else',
};

/** What stands under every odd piece: how it was told. */
export const oddSays =
  'Told by the outlier test about a line, 1 in 20 by chance. Kept as typed; nobody alters it for you.';

export const oddAnswers = {
  again: 'Measure it again',
  right: 'It is right',
  aside: 'Set it aside',
} as const;

/** An odd piece, as far as words need it. Lengths in pm. */
export type OddFacts = {
  mark: string;
  offPm: number;
  saidRight: boolean;
  /** The likely slip, and what it would read without it. */
  slip: { kind: SlipKind | null; text: string; insteadPm: number | null } | null;
};

/** A piece off the line: how far, and the slip it looks like. */
export function oddWords(odd: OddFacts, shown: Shown): { title: string; says: string } {
  const off = shownLength(Math.abs(odd.offPm), chartStepPm[shown.unit], shown);
  const title = `${odd.mark} stands off the line`;
  const where = `${off} ${odd.offPm < 0 ? 'below' : 'above'} where the others put it.`;
  if (odd.saidRight) return { title, says: `${where} Said to be right; it counts.` };
  return { title, says: `${where} ${likely(odd.slip, shown)}` };
}

function likely(slip: OddFacts['slip'], shown: Shown): string {
  if (slip === null || slip.kind === null) {
    return 'No usual slip explains it: swarf, a burr, a warm piece, or it is so.';
  }
  const instead =
    slip.insteadPm === null
      ? ''
      : `, ${shownLength(slip.insteadPm, chartStepPm[shown.unit], shown)} without it`;
  return `${slip.text} looks like ${slips[slip.kind]}${instead}.`;
}

/** Beside what a run says while odd pieces count in it. */
export function oddFirstWords(marks: readonly string[]): string {
  const [last, before] = [marks.at(-1)!, marks.slice(0, -1).join(', ')];
  return before === ''
    ? `${last} stands off the line and counts in this: settle it first.`
    : `${before} and ${last} stand off the line and count in this: settle them first.`;
}

/** The reason offered when a reading is set aside. */
export function asideReason(slip: OddFacts['slip']): string {
  return slip === null || slip.kind === null ? 'off the line' : `off the line: ${slips[slip.kind]}`;
}

type DriftFacts =
  | { kind: 'line'; slopeMmPerPiece: number; scatterMm: number; pieces: number }
  | { kind: 'too-little'; pieces: number };

/** The drift with the odd pieces and without them, a row each; `each` is what moves along the axis. */
export function withWithoutWords(
  drift: { withAll: DriftFacts; without: DriftFacts },
  each: 'piece' | 'turn',
  shown: Shown,
): { label: string; figure: string }[] {
  return [
    { label: 'With it', figure: driftLine(drift.withAll, each, shown) },
    { label: 'Without it', figure: driftLine(drift.without, each, shown) },
  ];
}

function driftLine(drift: DriftFacts, each: 'piece' | 'turn', shown: Shown): string {
  if (drift.kind === 'too-little') return 'too few for a line';
  const sign = drift.slopeMmPerPiece < 0 ? '\u2212' : '+';
  return `${sign}${slopeFigure(drift.slopeMmPerPiece, shown)} a ${each}, scatter ${slopeFigure(drift.scatterMm, shown)}`;
}
