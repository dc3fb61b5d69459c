import { MathsInputError } from '../check';
import { requirePicometres } from './check-fit';

/** Limits of a size or of a clearance, pm; one of them may be left out. */
export type Limits = { lowerPm?: number; upperPm?: number };

/** What can be said of a value against its limits. Large is over the upper, top is near it. */
export type Verdict =
  | { kind: 'inside' }
  | { kind: 'near'; side: 'top' | 'bottom' }
  /** `byPm` is the distance beyond the limit, above zero. */
  | { kind: 'out'; side: 'large' | 'small'; byPm: number }
  | { kind: 'unsure'; side: 'top' | 'bottom' };

/**
 * Verdict of a measured size or clearance against its limits: inside, near a
 * limit, out, or not known well enough to say.
 *
 * With guard g: out beyond U + g or L - g; inside from L + g to U - g; unsure
 * between. Inside and within an eighth of the band of a limit is near. All on
 * whole picometres, so a value on a line falls where the rule says. Where the
 * value is unsure of both limits the nearer one is named, the upper on a tie.
 *
 * With one limit left out nothing is near, as there is no band to take an
 * eighth of. Source: [iso-14253-1] for the guard; the eighth is common practice,
 * no source.
 *
 * @throws {MathsInputError} `verdict-of/picometres`, `verdict-of/limits`, `verdict-of/guard`
 *
 * @example
 * verdictOf(17_999_000_000, { lowerPm: 17_996_000_000, upperPm: 18_000_000_000 }, 500_000);
 * // { kind: 'inside' }
 */
export function verdictOf(valuePm: number, limits: Limits, guardPm: number): Verdict {
  requireLimits(valuePm, limits, guardPm);
  const { lowerPm = -Infinity, upperPm = Infinity } = limits;
  if (valuePm > upperPm + guardPm) return { kind: 'out', side: 'large', byPm: valuePm - upperPm };
  if (valuePm < lowerPm - guardPm) return { kind: 'out', side: 'small', byPm: lowerPm - valuePm };
  const [toTop, toBottom] = [upperPm - valuePm, valuePm - lowerPm];
  const side = toTop <= toBottom ? 'top' : 'bottom';
  if (toTop < guardPm || toBottom < guardPm) return { kind: 'unsure', side };
  const band = upperPm - lowerPm;
  if (band < Infinity && 8 * Math.min(toTop, toBottom) <= band) return { kind: 'near', side };
  return { kind: 'inside' };
}

function requireLimits(valuePm: number, { lowerPm, upperPm }: Limits, guardPm: number): void {
  requirePicometres('verdict-of', 'verdictOf', 'a value', valuePm);
  for (const limit of [lowerPm, upperPm]) {
    if (limit !== undefined) requirePicometres('verdict-of', 'verdictOf', 'limits', limit);
  }
  const none = lowerPm === undefined && upperPm === undefined;
  if (none || (lowerPm ?? -Infinity) >= (upperPm ?? Infinity)) {
    throw new MathsInputError(
      'verdict-of/limits',
      `verdictOf requires a lower limit below the upper, got ${lowerPm} and ${upperPm}`,
    );
  }
  if (!(Number.isSafeInteger(guardPm) && guardPm >= 0)) {
    throw new MathsInputError(
      'verdict-of/guard',
      `verdictOf requires a guard of whole picometres from zero up, got ${guardPm}`,
    );
  }
}
