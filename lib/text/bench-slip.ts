import { formatLength } from '@/lib/units/format-length';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import type { SlipKind } from '@/lib/schema/reading';
import { capital } from './capital';
import { shownLength, type Shown } from './shown-size';
import { typedAside } from './typed-aside';

/** A held reading and what it is held against. Lengths in pm. */
export type SlipFactsShown = {
  kind: SlipKind;
  valuePm: number;
  /** The keys pressed, and the unit they were taken in; left out, they are the size as it is shown. */
  typed?: { text: string; unit: 'mm' | 'in' };
  insteadPm: number | null;
  stepPm: number | null;
  /** The end of the gauge's range it lies beyond. */
  stopsAtPm: number | null;
  /** What was expected, and what says so; null where nothing does. */
  expected: { from: 'readings' | 'limits' | 'nominal'; lowPm: number; highPm: number } | null;
  /** How many other readings count. */
  others: number;
  /** Their mean; null where there are none. */
  othersMeanPm: number | null;
  /** "L5 bore", where it fits another feature. */
  elsewhere: string | null;
  gauge: { name: string; kind: string; unit: 'mm' | 'in'; resolutionPm: number };
  resolutionPm: number;
  /** The standard deviation of one reading of the gauge, from its history; null where it has none. */
  repeatPm?: number | null;
};

export type SlipQuestion = {
  title: string;
  rows: { label: string; figure: string; note?: string; suspect?: boolean }[];
  /** The figures of the reading that are in doubt, from and up to. */
  suspect: [from: number, to: number];
};

/** What stands under every slip's arithmetic. */
export const slipSays =
  'Kept as typed, left out of the size until you say. Nobody alters it for you.';

export const slipAnswers = {
  again: 'Measure it again',
  right: 'Keep it as it is',
  slip: 'It was a slip, strike it out',
  mistyped: 'I mistyped, it reads \u2026',
} as const;

/** Why a reading counts after all: one tap each, or in a person's own words. */
export const slipReasons = {
  title: 'Why does it count?',
  usual: ['measured twice, the same', 'the part is so', 'the gauge is right'],
  own: 'Another reason',
  keep: 'Keep it',
  back: 'Back',
} as const;

/**
 * The question about a held reading while the earlier ones are hidden: it shows what was typed and
 * nothing it is held against.
 */
export function blindSlipQuestion(
  facts: Pick<SlipFactsShown, 'valuePm' | 'resolutionPm' | 'typed'>,
  shown: Shown,
): SlipQuestion {
  const typed = shownLength(facts.valuePm, facts.resolutionPm, shown);
  return {
    title: 'Is this what the gauge said?',
    rows: [typedRow(facts.typed, typed, shown)],
    suspect: [0, typed.length],
  };
}

/**
 * The question a held reading raises: its title, the arithmetic, and which figures are in doubt.
 *
 * @example
 * // title 'One turn of the thimble?', rows: As typed 18.498; One turn less 17.998, 0.500 a turn;
 * // The other four 17.999, within 0.001
 */
export function slipQuestion(facts: SlipFactsShown, shown: Shown): SlipQuestion {
  const typed = shownLength(Math.round(facts.valuePm), facts.resolutionPm, shown);
  // Of a point left out the last place typed is a millimetre; what it may be is shown to the gauge's step.
  const finestPm = Math.min(facts.resolutionPm, facts.gauge.resolutionPm);
  const instead =
    facts.insteadPm === null ? null : shownLength(Math.round(facts.insteadPm), finestPm, shown);
  const rows: SlipQuestion['rows'] = [typedRow(facts.typed, typed, shown)];
  const middle = insteadRow(facts, instead, shown);
  if (middle !== null) rows.push(middle);
  const expected = expectedRow(facts, shown);
  if (expected !== null) rows.push(expected);
  const history = historyRow(facts, shown);
  if (history !== null) rows.push(history);
  return { title: titleOf(facts, typed, instead, shown), rows, suspect: doubted(typed, instead) };
}

/** "As typed 18.498"; of a size typed in another way, how: "Typed .4996mm 0.019669". */
function typedRow(
  typed: SlipFactsShown['typed'],
  figure: string,
  { unit }: Shown,
): SlipQuestion['rows'][number] {
  const aside = typed === undefined ? '' : typedAside(typed, { text: figure, unit });
  return { label: aside === '' ? 'As typed' : capital(aside), figure, suspect: true };
}

function titleOf(
  facts: SlipFactsShown,
  typed: string,
  instead: string | null,
  shown: Shown,
): string {
  switch (facts.kind) {
    case 'thimble turn':
      return 'One turn of the thimble?';
    case 'needle turn':
      return 'One turn of the needle?';
    case 'sleeve line':
      return facts.gauge.kind === 'micrometer' ? 'One line of the sleeve?' : 'One main division?';
    case 'wrong frame':
      return facts.gauge.kind === 'micrometer' ? 'A frame of another size?' : 'Another rod?';
    case 'other unit':
      return facts.insteadPm !== null && facts.insteadPm < facts.valuePm
        ? 'This looks like millimetres. Is it?'
        : 'This looks like inches. Is it?';
    case 'decimal point':
      return 'Is the point in its place?';
    case 'swapped figures':
      if (instead === null) return 'Two figures swapped?';
      return facts.expected === null || facts.expected.from === 'readings'
        ? `${typed} where the others say ${instead}. Two figures swapped?`
        : `${typed}, or ${instead}? Two figures swapped?`;
    case 'half or double':
      return facts.insteadPm !== null && facts.insteadPm > facts.valuePm
        ? 'Half the size?'
        : 'Twice the size?';
    case 'wrong feature':
      return facts.elsewhere === null ? 'Is this another feature?' : `Is this ${facts.elsewhere}?`;
    case 'one figure':
      return 'One figure wrong?';
    case 'far off':
      if (facts.stopsAtPm === null) {
        return facts.expected?.from === 'readings'
          ? 'Far from the others. Is it right?'
          : 'Far from what is drawn. Is it right?';
      }
      return facts.stopsAtPm < facts.valuePm
        ? `${facts.gauge.name} stops at ${plainFigure(facts.stopsAtPm, shown)}. This says ${typed}.`
        : `${facts.gauge.name} begins at ${plainFigure(facts.stopsAtPm, shown)}. This says ${typed}.`;
  }
}

function insteadRow(
  facts: SlipFactsShown,
  instead: string | null,
  shown: Shown,
): SlipQuestion['rows'][number] | null {
  if (instead === null) return null;
  const less = facts.insteadPm! < facts.valuePm;
  switch (facts.kind) {
    case 'thimble turn':
    case 'needle turn':
    case 'sleeve line': {
      const what = facts.kind === 'sleeve line' ? 'line' : 'turn';
      const step = shownLength(facts.stepPm ?? 0, facts.gauge.resolutionPm, shown);
      return {
        label: `One ${what} ${less ? 'less' : 'more'}`,
        figure: instead,
        note: `${step} a ${what}`,
      };
    }
    case 'wrong frame': {
      const step = plainFigure(facts.stepPm ?? 0, shown);
      return { label: `${step} ${less ? 'less' : 'more'}`, figure: instead };
    }
    case 'other unit':
      return { label: less ? 'Millimetres' : 'Inches', figure: instead };
    case 'decimal point':
      return { label: 'Point moved', figure: instead };
    case 'swapped figures':
      return { label: 'Swapped', figure: instead };
    case 'half or double':
      return { label: less ? 'Half of it' : 'Twice that', figure: instead };
    default:
      return { label: 'It may be', figure: instead };
  }
}

function expectedRow(facts: SlipFactsShown, shown: Shown): SlipQuestion['rows'][number] | null {
  const { expected, others, othersMeanPm } = facts;
  if (expected === null) return null;
  const { lowPm, highPm } = expected;
  const stepPm = facts.gauge.resolutionPm;
  const figure = (pm: number) => shownLength(Math.round(pm), stepPm, shown);
  if (expected.from === 'readings') {
    const spread = highPm - lowPm;
    return {
      label: others === 1 ? 'The other one' : `The other ${numberWord(others)}`,
      figure: figure(othersMeanPm ?? lowPm),
      ...(others === 1 ? {} : { note: `within ${figure(Math.max(spread, stepPm))}` }),
    };
  }
  if (expected.from === 'nominal') return null;
  return { label: 'The limits', figure: figure(lowPm), note: `to ${figure(highPm)}` };
}

/** Asked where a mended reading looks like a slip itself. */
export function mendedDoubtWords(text: string, instead: string | null): string {
  const or = instead === null ? '' : `, or ${instead}`;
  return `Is it ${text.trim()}${or}? It does not lie with the others. Say it once more to keep it.`;
}

/** What the gauge's own history says, where nothing but distance is the matter. */
function historyRow(facts: SlipFactsShown, shown: Shown): SlipQuestion['rows'][number] | null {
  const { kind, stopsAtPm, repeatPm = null, gauge, expected } = facts;
  if (kind !== 'far off' || stopsAtPm !== null || repeatPm === null) return null;
  if (expected?.from !== 'readings') return null;
  const withinPm = Math.max(Math.ceil((2 * repeatPm) / gauge.resolutionPm), 1) * gauge.resolutionPm;
  const figure = shownLength(withinPm, gauge.resolutionPm, shown);
  return { label: `${gauge.name} repeats`, figure: `\u00b1 ${figure}` };
}

/** Up to the last figure that would be another one; all of it where the two do not compare. */
function doubted(typed: string, instead: string | null): [number, number] {
  if (instead === null || instead.length !== typed.length) return [0, typed.length];
  let to = typed.length;
  while (to > 0 && typed[to - 1] === instead[to - 1]) to -= 1;
  return [0, to];
}

/** 25, not 25.000. */
function plainFigure(pm: number, { unit, decimal }: Shown): string {
  const decimals = decimalsForResolution(1, unit);
  const text = formatLength(pm, { unit, decimals, decimal });
  return text.replace(/[.,]?0+$/, '') || '0';
}

function numberWord(count: number): string {
  return ['none', 'one', 'two', 'three', 'four', 'five', 'six'][count] ?? String(count);
}
