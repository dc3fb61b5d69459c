import type { Fit } from '@/lib/schema/fit';
import type { ParsedLength } from '@/lib/units/parse-length';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { parseClearance, type WantedClearance, type WantedText } from '../parse-clearance';
import { parseSigned } from '../parse-signed';
import { readClasses, type ClassesFault } from './read-classes';
import { readRule, ruleClearances, type RuleFault, type RuleText } from './read-rule';

/** What a fit is, as it is being written down: one of three ways; the others keep what was typed. */
export type FitSaid = {
  way: Fit['way'];
  limits: WantedText;
  classes: string;
  /** Aim within a pair of classes; empty is the middle. */
  classesAim: string;
  /** The rule it was taken from: a starter's key, an own rule's id, or '' for one typed here. */
  ruleKey: string;
  ruleName: string;
  rule: RuleText;
  governs: Fit['governs'];
};

/** The fields of a fit that say what is wanted. */
export type WantedFields = Required<
  Pick<
    Fit,
    | 'way'
    | 'classes'
    | 'minPm'
    | 'maxPm'
    | 'aimPm'
    | 'governs'
    | 'atPm'
    | 'ruleName'
    | 'ruleFixedPm'
    | 'ruleMinNmPerMm'
    | 'ruleAimNmPerMm'
    | 'ruleMaxNmPerMm'
  >
>;

export type WantedFault =
  | ({ way: 'limits' } & Extract<WantedClearance, { kind: 'wrong' }>)
  | { way: 'classes'; field: 'classes'; fault: ClassesFault }
  | {
      way: 'classes';
      field: 'aim';
      problem: Exclude<ParsedLength, { kind: 'length' }> | 'aim outside';
    }
  | ({ way: 'rule' } & RuleFault)
  | { way: 'rule'; field: 'nominal' };

export type ReadWanted =
  { kind: 'wanted'; fields: WantedFields } | { kind: 'wrong'; wrong: WantedFault };

const nothing = {
  classes: null,
  atPm: null,
  ruleName: null,
  ruleFixedPm: null,
  ruleMinNmPerMm: null,
  ruleAimNmPerMm: null,
  ruleMaxNmPerMm: null,
};

/**
 * What a fit said in one of its three ways comes to: least, most and aim, and what they were worked out
 * from, or the first thing that is wrong. Classes and rules are worked out at the nominal of the bore.
 */
export function readWanted(
  said: FitSaid,
  at: { nominalPm: number | null; decimal: DecimalMark; unit: LengthUnit },
): ReadWanted {
  const { governs } = said;
  if (said.way === 'limits') {
    const read = parseClearance(said.limits, at);
    if (read.kind === 'wrong') return { kind: 'wrong', wrong: { way: 'limits', ...read } };
    const { minPm, maxPm, aimPm } = read;
    return { kind: 'wanted', fields: { ...nothing, way: 'limits', minPm, maxPm, aimPm, governs } };
  }
  return said.way === 'classes' ? byClasses(said, at) : byRule(said, at);
}

function byClasses(said: FitSaid, at: Parameters<typeof readWanted>[1]): ReadWanted {
  const read = readClasses(said.classes, at.nominalPm);
  if (read.kind === 'wrong') {
    return { kind: 'wrong', wrong: { way: 'classes', field: 'classes', fault: read.fault } };
  }
  const { minPm, maxPm, text } = read;
  let aimPm = Math.round((minPm + maxPm) / 2);
  if (said.classesAim.trim() !== '') {
    const aim = parseSigned(said.classesAim, at);
    const wrong = (problem: Exclude<ParsedLength, { kind: 'length' }> | 'aim outside') =>
      ({ kind: 'wrong', wrong: { way: 'classes', field: 'aim', problem } }) as const;
    if (aim.kind !== 'length') return wrong(aim);
    if (aim.pm < minPm || aim.pm > maxPm) return wrong('aim outside');
    aimPm = aim.pm;
  }
  const { governs } = said;
  const figures = { minPm, maxPm, aimPm, governs, atPm: at.nominalPm };
  return { kind: 'wanted', fields: { ...nothing, way: 'classes', classes: text, ...figures } };
}

function byRule(said: FitSaid, at: Parameters<typeof readWanted>[1]): ReadWanted {
  const read = readRule(said.rule, at);
  if (read.kind === 'wrong') return { kind: 'wrong', wrong: { ...read, way: 'rule' } };
  if (at.nominalPm === null) return { kind: 'wrong', wrong: { way: 'rule', field: 'nominal' } };
  const { fixedPm, minNmPerMm, aimNmPerMm, maxNmPerMm } = read.rule;
  return {
    kind: 'wanted',
    fields: {
      ...nothing,
      way: 'rule',
      ...ruleClearances(read.rule, at.nominalPm),
      governs: said.governs,
      atPm: at.nominalPm,
      ruleName: said.ruleName.trim() || 'A rule of our own',
      ruleFixedPm: fixedPm,
      ruleMinNmPerMm: minNmPerMm,
      ruleAimNmPerMm: aimNmPerMm,
      ruleMaxNmPerMm: maxNmPerMm,
    },
  };
}

/** A fit nobody has said anything of yet. */
export function nothingSaid(): FitSaid {
  return {
    way: 'limits',
    limits: { min: '', max: '', aim: '' },
    classes: '',
    classesAim: '',
    ruleKey: '',
    ruleName: '',
    rule: { fixed: '', min: '', aim: '', max: '' },
    governs: 'extreme',
  };
}

/** Whether nothing was typed of the way that is chosen, so that there is no fit yet. */
export function isSaid({ way, limits, classes, rule }: FitSaid): boolean {
  if (way === 'limits') return limits.min.trim() !== '' || limits.max.trim() !== '';
  if (way === 'classes') return classes.trim() !== '';
  return [rule.min, rule.aim, rule.max].some((text) => text.trim() !== '');
}
