import type { LengthUnit } from '@/lib/units/picometres';
import { capital } from './capital';
import { countWord } from './drift-words';
import { exactFigure } from './exact-figure';
import { listWords } from './list-words';
import type { Said } from './said';
import { shownLength, shownSize, type Shown } from './shown-size';
import { unitBeside } from './unit-beside';
import { unitWords } from './unit-words';

/** What is to be done next with a piece being cut, as the rules say it. Lengths in pm. */
export type CutAdviceFacts =
  | { kind: 'measure' | 'held' | 'too few' | 'past' | 'too near' | 'no slide' }
  | { kind: 'made'; proven: boolean }
  | { kind: 'lap'; leftPm: number }
  | { kind: 'spring'; why: SpringWhy }
  | {
      kind: 'cut';
      how: 'learning' | 'as before' | 'two equal' | 'last' | 'own';
      cautious: boolean;
      expected: { valuePm: number; expandedPm: number } | null;
    };

export type CutPiece = {
  mark: string;
  side: 'external' | 'internal';
  gauge: string;
  resolutionPm: number;
  /** The limit past which nothing can be put back, pm. */
  stopPm: number;
  now: { valuePm: number; expandedPm: number } | null;
  byPm: number;
  lapPm: number;
  leftPm: number | null;
  /** The thinnest cut the tool bites, as it stands on the dial, pm; 0 where nobody said. */
  bitesDialPm: number;
  dialUnit: LengthUnit;
  springPm: number | null;
};

/** What to do next, and what is to be expected of it: one or two sentences. */
export function cutAdviceWords(advice: CutAdviceFacts, piece: CutPiece, shown: Shown): Said {
  const figure = (pm: number) => ({ figure: shownLength(pm, piece.resolutionPm, shown) });
  const { mark, now } = piece;
  switch (advice.kind) {
    case 'measure':
      return [`Measure ${mark}: nothing is known of it since the last cut.`];
    case 'held':
      return ['A reading is held. Say on the bench whether it counts.'];
    case 'too few':
      return [
        `Nothing says yet how well ${piece.gauge} repeats. Read it three times, or state its uncertainty with the gauges.`,
      ];
    case 'no slide':
      return ['Say which slide it is cut with, and what to put on the dial follows.'];
    case 'made':
      return madeWords(advice.proven, piece, shown);
    case 'past':
      return [
        `${mark} is `,
        figure(piece.byPm),
        ` past ${shownLength(piece.stopPm, piece.resolutionPm, shown)}. Nothing can be put back: say what becomes of it.`,
      ];
    case 'too near':
      return [
        { figure: now === null ? mark : shownSize(now, piece.resolutionPm, shown).value },
        ` is too near ${shownLength(piece.stopPm, piece.resolutionPm, shown)} to say. Measure ${mark} again, finer, and do not cut.`,
      ];
    case 'lap':
      return [
        piece.side === 'external' ? 'Turned. ' : 'Bored. ',
        ...lapWords(advice.leftPm, piece, shown),
      ];
    case 'spring':
      return springWords(advice.why, piece, shown);
    case 'cut':
      return [...cutWords(advice, piece, shown), ...lapAfter(piece, shown)];
  }
}

/** What the last cuts teach, spring passes apart; nothing with fewer than two comparable cuts. */
export function learnedWords(
  facts: {
    learned: { mean: number; sd: number; used: number } | null;
    /** The marks of the other pieces that cuts come from, in order, one for each cut. */
    elsewhere: readonly string[];
    springs: number;
    springPm: number | null;
    bitesDialPm: number;
    dialUnit: LengthUnit;
    resolutionPm: number;
  },
  shown: Shown,
): Said {
  const { learned, springs, springPm, bitesDialPm, resolutionPm } = facts;
  const said: (string | { figure: string })[] = [];
  if (learned !== null) {
    const spread = ratioWords(learned.sd, 3, shown);
    said.push(
      'It takes ',
      { figure: ratioWords(learned.mean, 2, shown) },
      ` of what you ask, over ${countWord(learned.used)} cuts${onWords(facts.elsewhere, learned.used)}, spread ${spread}. `,
    );
  }
  if (springPm !== null) {
    const passes =
      springs === 1 ? 'One spring pass took' : `${capital(countWord(springs))} spring passes took`;
    const mean = springs === 1 ? '' : ' each';
    said.push(`${passes} ${shownLength(springPm, resolutionPm, shown)}${mean}. `);
  }
  if (bitesDialPm > 0) {
    const figure = dialFigureIn(bitesDialPm, facts.dialUnit, shown);
    said.push(`This tool bites down to ${figure} on the dial.`);
  }
  return said;
}

/** On which other pieces cuts were made: ", three of them on P6 and P7"; nothing where on none. */
function onWords(marks: readonly string[], used: number): string {
  if (marks.length === 0) return '';
  const pieces = listWords([...new Set(marks)]);
  return marks.length === used
    ? ` on ${pieces}`
    : `, ${countWord(marks.length)} of them on ${pieces}`;
}

/** "18.086 down to 18.006". */
export function fromToWords(
  nowPm: number,
  to: string,
  { side, resolutionPm }: Pick<CutPiece, 'side' | 'resolutionPm'>,
  shown: Shown,
): string {
  const from = shownLength(nowPm, resolutionPm, shown);
  return `${from} ${side === 'external' ? 'down' : 'up'} to ${to}`;
}

/** "radius dial, 2 divisions", the unit where it is not the job's, and the set of the top slide where it is set over. */
export function dialWords(
  slide: { dial: 'radius' | 'diameter'; fineFeed: number; unit: LengthUnit },
  divisions: number | null,
  { decimal, unit }: Shown,
): string {
  const fine =
    slide.fineFeed === 1 ? '' : `, set over ${String(slide.fineFeed).replace('.', decimal)} to 1`;
  const count =
    divisions === null ? '' : `, ${divisions} ${divisions === 1 ? 'division' : 'divisions'}`;
  const marked = slide.unit === unit ? '' : ` in ${unitWords(slide.unit)}`;
  return `${slide.dial} dial${marked}${count}${fine}`;
}

/** A figure as it stands on a dial: as many places as it needs, two at the least in millimetres. */
export function dialFigure(pm: number, shown: Shown): string {
  return exactFigure(wholeNm(pm), shown, shown.unit === 'mm' ? 2 : 3);
}

/** The same where it stands in a sentence: with its unit where the dial is not marked in that of the job. */
export function dialFigureIn(pm: number, dialUnit: LengthUnit, shown: Shown): string {
  return `${dialFigure(pm, { ...shown, unit: dialUnit })}${unitBeside(dialUnit, shown)}`;
}

/** Beside the field for one division: the unit it is read in, and how a dial of the other unit is said. */
export function divisionHint(unit: LengthUnit, decimal: Shown['decimal']): string {
  const hint = unit === 'mm' ? 'mm, or as 0.001 in' : 'inches, or as 0.02 mm';
  return hint.replace('.', decimal);
}

/** Got over asked. */
export function ratioWords(
  ratio: number,
  decimals: number,
  { decimal }: Pick<Shown, 'decimal'>,
): string {
  return ratio.toFixed(decimals).replace('.', decimal).replace('-', '\u2212');
}

/** Nothing on a dial is finer than ten nanometres; what a ratio leaves over is not shown. */
function wholeNm(pm: number): number {
  return Math.round(pm / 10_000) * 10_000;
}

function madeWords(proven: boolean, { mark, now, resolutionPm }: CutPiece, shown: Shown): Said {
  if (!proven) return [`${mark} is at its target, and these gauges cannot prove it. Cut no more.`];
  if (now === null) return [`${mark} is made.`];
  const { value, plusMinus } = shownSize(now, resolutionPm, shown);
  return [`${mark} is made: `, { figure: `${value} ± ${plusMinus}` }, ', inside.'];
}

function cutWords(
  { how, cautious, expected }: CutAdviceFacts & { kind: 'cut' },
  { resolutionPm }: CutPiece,
  shown: Shown,
): Said {
  const expect: Said =
    expected === null
      ? []
      : [
          ' Expect ',
          { figure: expectedWords(expected, resolutionPm, shown) },
          how === 'two equal' ? ' after this one.' : ' after it.',
        ];
  switch (how) {
    case 'learning':
      return ['Two cuts alike first; then I can say what the next will take.'];
    case 'two equal':
      return ['Take two equal cuts.', ...expect];
    case 'as before':
      return ['As deep as the cuts before, and measure.', ...expect];
    case 'own':
      return ['Your own figure.', ...expect];
    case 'last':
      return [
        cautious
          ? 'One cut, short of the target: more might pass the stop.'
          : 'One cut to the target.',
        ...expect,
      ];
  }
}

/** "18.049 ± 0.002". */
export function expectedWords(
  expected: { valuePm: number; expandedPm: number },
  resolutionPm: number,
  shown: Shown,
): string {
  const { value, plusMinus } = shownSize(expected, resolutionPm, shown);
  return `${value} ± ${plusMinus}`;
}

type SpringWhy = 'thin' | 'less than a division' | 'unsure' | 'springs back';

function springWords(
  why: SpringWhy,
  { bitesDialPm, dialUnit, springPm, leftPm, resolutionPm }: CutPiece,
  shown: Shown,
): Said {
  if (why === 'thin') {
    return [
      'Too thin to bite: this tool wants ',
      { figure: dialFigureIn(bitesDialPm, dialUnit, shown) },
      ' or more on the dial. Take a spring pass.',
    ];
  }
  if (why === 'less than a division') {
    return ['Less is left than the dial or the tool can take. A spring pass, then lap.'];
  }
  if (why === 'unsure') {
    return [
      'The last cuts took so differently that one division might pass the stop. A spring pass, then lap.',
    ];
  }
  const took = shownLength(springPm ?? 0, resolutionPm, shown);
  const left = shownLength(leftPm ?? 0, resolutionPm, shown);
  return [
    'Spring pass first: they took ',
    { figure: took },
    ` by themselves, and ${left} is left.`,
  ];
}

function lapAfter(piece: CutPiece, shown: Shown): Said {
  return piece.lapPm > 0 ? [' ', ...lapWords(piece.lapPm, piece, shown)] : [];
}

function lapWords(leftPm: number, { side, resolutionPm }: CutPiece, shown: Shown): Said {
  const left = shownLength(leftPm, resolutionPm, shown);
  return [`Lap ${side === 'external' ? 'off' : 'out'} the last ${left}.`];
}
