import { MathsInputError } from '../check';
import { parseFormula } from '../derived/formula';
import { sensitivities } from '../metrology/sensitivities';
import type { ClosingRange } from './linear-chain';

/** A member of a chain that closes by a formula. */
export type FormulaLink = { value: number; halfTolerance: number };

export type FormulaChain = {
  value: number;
  /** How much the result moves for one of each name. */
  sensitivities: Record<string, number>;
  /** Halves by the slopes at the values: sum |c| t and sqrt(sum (c t)^2). */
  worstHalfLinear: number;
  rssHalfLinear: number;
  /** Least and most over all corners of the tolerances: the true worst case where slopes keep their sign. */
  corners: ClosingRange;
};

/**
 * Worst case and root-sum-square of a chain that closes by a formula (see
 * parseFormula), such as an angle.
 *
 * The slopes are right for small tolerances only; the corners, every name at
 * one end or the other, are worked out as well, and where they differ the
 * corners count. At most 16 names.
 *
 * Cost: 2^names evaluations. Source: [jcgm-100] 5.1.2 for the slopes.
 *
 * @throws {MathsInputError} `formula-chain/unknown`, `formula-chain/link`,
 *   `formula-chain/too-many`, `formula-chain/no-value`, `formula/...`, `sensitivities/...`
 *
 * @example
 * formulaChain('acos((a + c)/(e - c)) in degrees', links).corners; // 5.957 to 7.938
 */
export function formulaChain(
  text: string,
  links: Readonly<Record<string, FormulaLink>>,
): FormulaChain {
  const { names, evaluate } = parseFormula(text);
  if (names.length > 16) {
    throw new MathsInputError(
      'formula-chain/too-many',
      `formulaChain requires at most 16 names, got ${names.length}`,
    );
  }
  const members = names.map((name) => linkOf(links, name));
  const values = members.map((link) => link.value);
  const halves = members.map((link) => link.halfTolerance);
  const slopes = sensitivities(evaluate, values, halves);
  const parts = slopes.map((slope, i) => Math.abs(slope) * halves[i]!);
  return {
    value: defined(evaluate(values)),
    sensitivities: Object.fromEntries(names.map((name, i) => [name, slopes[i]!])),
    worstHalfLinear: parts.reduce((sum, part) => sum + part, 0),
    rssHalfLinear: Math.hypot(...parts),
    corners: cornersOf(evaluate, values, halves),
  };
}

function cornersOf(
  evaluate: (values: readonly number[]) => number,
  values: readonly number[],
  halves: readonly number[],
): ClosingRange {
  let [least, most] = [Infinity, -Infinity];
  for (let corner = 0; corner < 2 ** values.length; corner += 1) {
    const at = values.map((value, i) => value + (corner & (1 << i) ? halves[i]! : -halves[i]!));
    const result = defined(evaluate(at));
    least = Math.min(least, result);
    most = Math.max(most, result);
  }
  return { least, most };
}

function defined(value: number): number {
  if (Number.isFinite(value)) return value;
  throw new MathsInputError(
    'formula-chain/no-value',
    `formulaChain requires a formula with a value over the whole tolerance, got ${value}`,
  );
}

function linkOf(links: Readonly<Record<string, FormulaLink>>, name: string): FormulaLink {
  const link = Object.hasOwn(links, name) ? links[name] : undefined;
  if (link === undefined) {
    throw new MathsInputError(
      'formula-chain/unknown',
      `formulaChain requires a value for each name of the formula, got none for ${name}`,
    );
  }
  if (Number.isFinite(link.value) && link.halfTolerance >= 0 && link.halfTolerance < Infinity) {
    return link;
  }
  throw new MathsInputError(
    'formula-chain/link',
    `formulaChain requires finite values and half tolerances from zero up, got ${link.value} and ${link.halfTolerance} for ${name}`,
  );
}
