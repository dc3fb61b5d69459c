import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { clearanceStep, wantedFigure } from './fit-words';
import { lengthWords } from './length-words';
import { quantityWords, type QuantityTrouble } from './quantity-words';
import type { Shown } from './shown-size';

type ClassesTrouble = {
  code: string;
  text?: string;
  texts?: readonly [string, string];
  letters?: string;
  character?: string;
  side?: 'internal' | 'external';
};
type Half = { text: string; upperPm: number; lowerPm: number };
type Rule = { fixedPm: number; minNmPerMm: number; aimNmPerMm: number; maxNmPerMm: number };

/** Stands beside every rule that is offered. */
export const practiceWords = 'common practice, yours to overrule';

/** A length that is not a clearance, as many figures as it needs up to the step of clearances: 18, 12.7. */
export function plainSize(pm: number, shown: Shown): string {
  const step = shown.unit === 'mm' ? 1_000_000 : 2_540_000;
  const decimals = decimalsForResolution(step, shown.unit);
  const text = formatLength(pm, { ...shown, decimals });
  return text.replace(/0+$/, '').replace(/[.,]$/, '');
}

/** Why what was typed is no pair of classes, and what to type instead. */
export function classesFaultWords(
  { code, text = '', texts = ['', ''], letters = '', character = '', side }: ClassesTrouble,
  nominalPm: number | null,
  shown: Shown,
): string {
  const at = nominalPm === null ? '' : `nominal ${plainSize(nominalPm, shown)}: `;
  switch (code) {
    case 'empty':
      return 'Type a hole and a shaft, such as H7/g6.';
    case 'no-nominal':
      return 'The bore needs a size before the limits of its class are known.';
    case 'character':
      return `"${character}" is no part of a class. A pair is letters and a grade, twice: H7/g6.`;
    case 'no-grade':
      return `${text} has no grade behind it: ${text}7, for one.`;
    case 'mixed-case':
      return `${text}: both letters are capital for a hole, or both small for a shaft.`;
    case 'letters':
      return `${at}no ${letters} in the standard.`;
    case 'grade':
      return `${text}: grades run from 01 to 18.`;
    case 'alone':
      return side === 'internal'
        ? `${text} is a hole alone. Put the shaft beside it: ${text}/g6.`
        : `${text} is a shaft alone. Put the hole beside it, with a capital: H7/${text}.`;
    case 'same-side':
      return side === 'internal'
        ? `${texts[0]} and ${texts[1]} are both holes. A shaft has a small letter.`
        : `${texts[0]} and ${texts[1]} are both shafts. A hole has a capital.`;
    case 'too-many':
      return `One hole and one shaft; ${text} is one too many.`;
    case 'size':
      return `${at}the standard ends at 3150 mm.`;
    default:
      return `${at}no ${text} in the standard.`;
  }
}

/** Limits of both halves and the clearances they leave, as they are typed. */
export function classesEchoWords(
  read: { hole: Half; shaft: Half; minPm: number; maxPm: number; fit: string },
  nominalPm: number,
  shown: Shown,
): { hole: string; shaft: string; clearance: string } {
  const half = (name: string, { text, upperPm, lowerPm }: Half) =>
    `${name} ${text}: ${wantedFigure(nominalPm + lowerPm, shown)} to ${wantedFigure(nominalPm + upperPm, shown)} ${unitOf(shown)}`;
  return {
    hole: half('Hole', read.hole),
    shaft: half('Shaft', read.shaft),
    clearance: `${kinds[read.fit] ?? 'Fit'}: ${clearRange(read.minPm, read.maxPm, shown)}`,
  };
}

const kinds: Readonly<Record<string, string>> = {
  clearance: 'Clearance fit',
  transition: 'Transition fit',
  interference: 'Interference fit',
};

/** The two nominals of a fit are not one; a pair of classes needs one. */
export function nominalsDifferWords(borePm: number, shaftPm: number, shown: Shown): string {
  return `The bore is ${plainSize(borePm, shown)} and the shaft ${plainSize(shaftPm, shown)} ${unitOf(shown)}: classes are worked out on the bore's.`;
}

/** A standard pair near what is wanted: "H7/g6, 0.006 to 0.035 clear". */
export function nearPairWords(
  pair: { text: string; minPm: number; maxPm: number; inside: boolean },
  shown: Shown,
): string {
  const range = clearRange(pair.minPm, pair.maxPm, shown);
  return `${pair.text}, ${range}${pair.inside ? '' : ', not all inside'}`;
}

/** "0.006 to 0.035 clear", "0.005 tight to 0.013 clear", "0 to 0.029 tight". */
export function clearRange(minPm: number, maxPm: number, shown: Shown): string {
  const stepPm = clearanceStep({ minPm, maxPm }, shown.unit);
  const figure = (pm: number) => wantedFigure(Math.abs(pm), shown, stepPm);
  if (minPm >= 0) return `${figure(minPm)} to ${figure(maxPm)} clear`;
  if (maxPm <= 0) return `${figure(maxPm)} to ${figure(minPm)} tight`;
  return `${figure(minPm)} tight to ${figure(maxPm)} clear`;
}

/** A slope in the words of the unit of the job; the figure is the same in both. */
export function slopeWords(nmPerMm: number, { unit, decimal }: Shown): string {
  return `${slopeFigure(nmPerMm, decimal)} ${slopeUnit(unit)}`;
}

/** The figures of a rule as its fields are named, each with what is typed there. */
export function ruleFieldWords(unit: Shown['unit']) {
  return [
    ['fixed', 'Constant', `${unit}; empty: none`],
    ['min', 'Least slope', slopeUnit(unit)],
    ['aim', 'Aimed slope', slopeUnit(unit)],
    ['max', 'Most slope', slopeUnit(unit)],
  ] as const;
}

function slopeUnit(unit: Shown['unit']): string {
  return unit === 'mm' ? 'µm per mm' : 'thou per inch';
}

/** As many figures as the slope has: 1, 0.75, −1.5. */
export function slopeFigure(nmPerMm: number, decimal: Shown['decimal']): string {
  const text = String(Math.abs(nmPerMm) / 1000).replace('.', decimal);
  return nmPerMm < 0 ? `\u2212${text}` : text;
}

/** How a rule comes to its figures: least, aim and most, each worked out. */
export function ruleWorkingWords(
  rule: Rule,
  clearances: { minPm: number; aimPm: number; maxPm: number },
  diameterPm: number,
  shown: Shown,
): { name: string; working: string; figure: string }[] {
  const one = (name: string, nmPerMm: number, pm: number) => {
    const constant =
      rule.fixedPm === 0
        ? ''
        : `${fixedFigure(rule.fixedPm, shown)} ${nmPerMm < 0 ? '\u2212' : '+'} `;
    const slope =
      constant === ''
        ? slopeFigure(nmPerMm, shown.decimal)
        : slopeFigure(Math.abs(nmPerMm), shown.decimal);
    const on = `${slope} ${slopeUnit(shown.unit)} × ${plainSize(diameterPm, shown)}`;
    return { name, working: `${constant}${on}`, figure: wantedFigure(pm, shown) };
  };
  return [
    one('Least', rule.minNmPerMm, clearances.minPm),
    one('Aim', rule.aimNmPerMm, clearances.aimPm),
    one('Most', rule.maxNmPerMm, clearances.maxPm),
  ];
}

/** The constant of a rule, with every figure it has: 0.0254, 0.001. */
export function fixedFigure(pm: number, shown: Shown): string {
  const decimals = shown.unit === 'mm' ? 6 : 7;
  const text = formatLength(pm, { ...shown, decimals }).replace(/0+$/, '');
  return text.replace(/[.,]$/, '');
}

/** A rule in one line: "0.0254 + 1.5 µm per mm". */
export function ruleWords(rule: Pick<Rule, 'fixedPm' | 'aimNmPerMm'>, shown: Shown): string {
  const { fixedPm, aimNmPerMm } = rule;
  if (fixedPm === 0) return slopeWords(aimNmPerMm, shown);
  const sign = aimNmPerMm < 0 ? '\u2212' : '+';
  return `${fixedFigure(fixedPm, shown)} ${sign} ${slopeWords(Math.abs(aimNmPerMm), shown)}`;
}

/** How far the slope goes: "slope 1.1 to 1.9". */
export function slopeRangeWords(
  { minNmPerMm, maxNmPerMm }: Pick<Rule, 'minNmPerMm' | 'maxNmPerMm'>,
  { decimal }: Pick<Shown, 'decimal'>,
): string {
  return `slope ${slopeFigure(minNmPerMm, decimal)} to ${slopeFigure(maxNmPerMm, decimal)}`;
}

/** What is wrong with a figure of a rule. */
export function ruleFaultWords(
  problem:
    QuantityTrouble | Parameters<typeof lengthWords>[0] | 'order' | 'too-steep' | 'needs-nominal',
  text: string,
): string {
  if (problem === 'order') return 'The slopes go least, aim, most, and least and most differ.';
  if (problem === 'too-steep') return `${text} is more than the whole diameter. Look at the point.`;
  if (problem === 'needs-nominal') return 'The bore needs a size before a rule can be worked out.';
  if (typeof problem !== 'string' && isQuantity(problem)) {
    return quantityWords(problem, text, 'a slope such as 1.5 thou per inch');
  }
  return lengthWords(problem as Parameters<typeof lengthWords>[0], text);
}

function isQuantity(problem: { kind: string; code: string }): problem is QuantityTrouble {
  return ['empty', 'not-a-number', 'two-ways', 'too-fine', 'unit'].includes(problem.code);
}

/** How a fit was said, where it was not said by its clearances; empty where it was. */
export function saidWords(
  fit: {
    way: string;
    classes: string | null;
    atPm?: number | null | undefined;
    ruleName?: string | null | undefined;
    ruleFixedPm?: number | null | undefined;
    ruleAimNmPerMm?: number | null | undefined;
  },
  shown: Shown,
): string {
  const on =
    fit.atPm === null || fit.atPm === undefined
      ? ''
      : ` on ${plainSize(fit.atPm, shown)} ${unitOf(shown)}`;
  if (fit.way === 'classes' && fit.classes !== null) return `Said as ${fit.classes}${on}.`;
  if (fit.way !== 'rule' || !fit.ruleName) return '';
  const rule = { fixedPm: fit.ruleFixedPm ?? 0, aimNmPerMm: fit.ruleAimNmPerMm ?? 0 };
  return `By the rule "${fit.ruleName}"${on}: ${ruleWords(rule, shown)}.`;
}

/** One sentence of care where a fit may be tight; none where it never is. */
export function tightCareWords(minPm: number): string | null {
  if (minPm >= 0) return null;
  return "Tight fits store force: a hub can burst, and heated or chilled parts burn; the maker's data, local codes and licensed practice decide, this figure gives no leave.";
}

function unitOf({ unit }: Shown): string {
  return unit === 'mm' ? 'mm' : 'inches';
}
