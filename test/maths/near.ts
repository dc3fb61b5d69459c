import { expect } from 'vitest';

/** Fails unless |got - wanted| <= abs + rel |wanted|. */
export function expectNear(
  got: number,
  wanted: number,
  { abs = 0, rel = 0 }: { abs?: number; rel?: number },
): void {
  const allowed = abs + rel * Math.abs(wanted);
  const isNear = Math.abs(got - wanted) <= allowed;
  expect(isNear ? wanted : got, `wanted ${wanted} to ${allowed}, got ${got}`).toBe(wanted);
}
