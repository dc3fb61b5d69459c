import { fitByRule } from '@/lib/maths/fit/fit-by-rule';
import type { ParsedLength } from '@/lib/units/parse-length';
import type { ParsedQuantity } from '@/lib/units/parse-quantity';
import { parseSlope } from '@/lib/units/parse-slope';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { parseSigned } from '../parse-signed';

/** A rule as a person types it. */
export type RuleText = { fixed: string; min: string; aim: string; max: string };

export type RuleFigures = {
  fixedPm: number;
  minNmPerMm: number;
  aimNmPerMm: number;
  maxNmPerMm: number;
};

export type RuleFault =
  | { field: 'fixed'; problem: Exclude<ParsedLength, { kind: 'length' }> }
  | { field: 'min' | 'aim' | 'max'; problem: Extract<ParsedQuantity, { kind: 'error' }> }
  | { field: 'min' | 'aim' | 'max'; problem: 'order' | 'too-steep' };

export type ReadRule = { kind: 'rule'; rule: RuleFigures } | ({ kind: 'wrong' } & RuleFault);

/** A thousandth of the diameter each way is steep; this is a thousand of those. */
const steepest = 1_000_000;

/** Reads constant and slopes; an empty constant is none. */
export function readRule(
  text: RuleText,
  { decimal, unit }: { decimal: DecimalMark; unit: LengthUnit },
): ReadRule {
  let fixedPm = 0;
  if (text.fixed.trim() !== '') {
    const fixed = parseSigned(text.fixed, { decimal, unit });
    if (fixed.kind !== 'length') return { kind: 'wrong', field: 'fixed', problem: fixed };
    fixedPm = fixed.pm;
  }
  const slopes = { min: 0, aim: 0, max: 0 };
  for (const field of ['aim', 'min', 'max'] as const) {
    const read = parseSlope(text[field], decimal);
    if (read.kind === 'error') return { kind: 'wrong', field, problem: read };
    if (Math.abs(read.quanta) > steepest) return { kind: 'wrong', field, problem: 'too-steep' };
    slopes[field] = read.quanta;
  }
  if (slopes.min >= slopes.max || slopes.min > slopes.aim) {
    return { kind: 'wrong', field: 'min', problem: 'order' };
  }
  if (slopes.aim > slopes.max) return { kind: 'wrong', field: 'max', problem: 'order' };
  return {
    kind: 'rule',
    rule: {
      fixedPm,
      minNmPerMm: slopes.min,
      aimNmPerMm: slopes.aim,
      maxNmPerMm: slopes.max,
    },
  };
}

/** What a rule gives at a diameter: least, aim and most, whole pm (`fitByRule`). */
export function ruleClearances(
  rule: RuleFigures,
  diameterPm: number,
): { minPm: number; aimPm: number; maxPm: number } {
  return fitByRule(diameterPm, {
    fixedPm: rule.fixedPm,
    ratesUmPerMm: {
      min: rule.minNmPerMm / 1000,
      aim: rule.aimNmPerMm / 1000,
      max: rule.maxNmPerMm / 1000,
    },
  });
}
