import type { LengthUnit } from '@/lib/units/picometres';
import { dialFigureIn, ratioWords } from './cut-words';
import { shownLength, type Shown } from './shown-size';

/** One line of the cut log as the rules give it. Lengths in pm. */
export type CutLine = {
  kind: 'cut' | 'spring' | 'unsaid' | 'sleeve';
  askedPm: number | null;
  gotPm: number | null;
  ratio: number | null;
  afterPm: number | null;
  onDial: OnDial;
};

/** What was put on the dial, pm, and what the dial is marked in; null where that is not known. */
type OnDial = { dialPm: number; unit: LengthUnit } | null;

/**
 * The cells of one line: asked, got, of asked, size after, and below what was asked how it stood on a dial that is not
 * marked in the unit shown. Empty where nothing is known.
 */
export type CutCells = { asked: string; dial: string; got: string; ratio: string; after: string };

export function cutCells(line: CutLine, resolutionPm: number, shown: Shown): CutCells {
  const figure = (pm: number | null) => (pm === null ? '' : shownLength(pm, resolutionPm, shown));
  return {
    asked: line.askedPm === null ? askedWords[line.kind] : figure(line.askedPm),
    dial: dialCell(line.onDial, shown),
    got: figure(line.gotPm),
    ratio: line.ratio === null ? '' : ratioWords(line.ratio, 2, shown),
    after: figure(line.afterPm),
  };
}

/** The line of a cut not taken yet: what is expected of it carries a question mark. */
export function nextCells(
  next: {
    askedPm: number;
    onDial: OnDial;
    expected: { takesPm: number; valuePm: number; ratio: number } | null;
  },
  resolutionPm: number,
  shown: Shown,
): CutCells {
  const asked = shownLength(next.askedPm, resolutionPm, shown);
  const dial = dialCell(next.onDial, shown);
  if (next.expected === null) return { asked, dial, got: '', ratio: '', after: '' };
  const { takesPm, valuePm, ratio } = next.expected;
  return {
    asked,
    dial,
    got: `${shownLength(takesPm, resolutionPm, shown)} ?`,
    ratio: `${ratioWords(ratio, 2, shown)} ?`,
    after: `${shownLength(valuePm, resolutionPm, shown)} ?`,
  };
}

function dialCell(onDial: OnDial, shown: Shown): string {
  if (onDial === null || onDial.unit === shown.unit) return '';
  return `dial ${dialFigureIn(onDial.dialPm, onDial.unit, shown)}`;
}

const askedWords = { cut: '', spring: 'spring', unsaid: 'not said', sleeve: 'sleeve' };

/** What a new stretch of learning began with. */
export function changedWords(changed: string | null): string {
  return changed === null
    ? 'Another machine, slide or tool'
    : (changes[changed] ?? changes['other']!);
}

/** What was changed while another piece was cut: "Insert changed, noted on P8". */
export function changedOnWords(changed: string | null, mark: string): string {
  return `${changedWords(changed)}, noted on ${mark}`;
}

const changes: Record<string, string> = {
  tool: 'Tool changed',
  insert: 'Insert changed',
  speed: 'Speed changed',
  overhang: 'Overhang changed',
  sleeve: 'Sleeve put in',
  other: 'Something else changed',
};
