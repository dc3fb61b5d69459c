import { expect } from 'vitest';

/** Asks for a number within an absolute tolerance, both ends allowed. */
export function expectNear(actual: number | undefined, wanted: number, tolerance: number): void {
  expect(actual).toBeTypeOf('number');
  expect(Math.abs(actual! - wanted), `${actual} against ${wanted}`).toBeLessThanOrEqual(tolerance);
}

/** The same for two lists, item by item. */
export function expectEachNear(
  actual: readonly number[],
  wanted: readonly number[],
  tolerance: number,
): void {
  expect(actual).toHaveLength(wanted.length);
  actual.forEach((value, i) => expectNear(value, wanted[i]!, tolerance));
}
