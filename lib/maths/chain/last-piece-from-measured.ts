import { MathsInputError } from '../check';
import { requireLimits } from './check-chain';
import type { ClosingRange } from './linear-chain';

/** A piece of a chain as measured. */
export type MeasuredLink = {
  coefficient: number;
  size: number;
  /** Expanded uncertainty of the size. */
  U: number;
};

export type LastPiece = {
  sumOfMeasured: number;
  /** Expanded uncertainty of that sum. */
  U: number;
  target: number;
  /** Sizes at which the closing link is at its limits. */
  limits: ClosingRange;
  /** The limits moved inwards by the uncertainty, or why there are none. */
  working: ({ kind: 'band' } & ClosingRange) | { kind: 'none'; wanting: number };
};

/**
 * Size to make the last piece of a chain to, from the others as measured.
 *
 * last = (aim - sum of coefficient x size)/a; limits likewise; U of the sum by
 * root-sum-square of coefficient x U; the working limits stand U/|a| inside.
 * The doubt of measuring the last piece itself is not in it. Any one unit.
 *
 * Source: [jcgm-100] 5.1.2, [iso-14253-1] for moving limits inwards.
 *
 * @throws {MathsInputError} `last-piece-from-measured/no-link`, `.../link`, `.../limits`, `.../aim`
 *
 * @example
 * lastPieceFromMeasured(measured, { coefficient: -1, aim: 0.1, closing: { least: 0.05, most: 0.15 } });
 * // target 0.051, working 0.00674 to 0.09526
 */
export function lastPieceFromMeasured(
  measured: readonly MeasuredLink[],
  last: { coefficient: number; aim: number; closing: ClosingRange },
): LastPiece {
  const { coefficient, aim, closing } = last;
  requireMeasured(measured);
  requireLimits('last-piece-from-measured', 'lastPieceFromMeasured', closing);
  if (!Number.isFinite(coefficient) || coefficient === 0 || !Number.isFinite(aim)) {
    throw new MathsInputError(
      'last-piece-from-measured/aim',
      `lastPieceFromMeasured requires an aim and a coefficient other than zero, got ${aim} and ${coefficient}`,
    );
  }
  const sumOfMeasured = measured.reduce((sum, one) => sum + one.coefficient * one.size, 0);
  const U = Math.hypot(...measured.map((one) => one.coefficient * one.U));
  const sizeFor = (closingLink: number) => (closingLink - sumOfMeasured) / coefficient;
  const ends = [sizeFor(closing.least), sizeFor(closing.most)];
  const limits = { least: Math.min(...ends), most: Math.max(...ends) };
  const inwards = U / Math.abs(coefficient);
  const [least, most] = [limits.least + inwards, limits.most - inwards];
  return {
    sumOfMeasured,
    U,
    target: sizeFor(aim),
    limits,
    working:
      least <= most ? { kind: 'band', least, most } : { kind: 'none', wanting: least - most },
  };
}

function requireMeasured(measured: readonly MeasuredLink[]): void {
  if (measured.length === 0) {
    throw new MathsInputError(
      'last-piece-from-measured/no-link',
      'lastPieceFromMeasured requires at least one measured piece, got none',
    );
  }
  measured.forEach(({ coefficient, size, U }, i) => {
    if ([coefficient, size, U].every(Number.isFinite) && coefficient !== 0 && U >= 0) return;
    throw new MathsInputError(
      'last-piece-from-measured/link',
      `lastPieceFromMeasured requires sizes with U from zero up, got ${size} and ${U} at link ${i}`,
    );
  });
}
