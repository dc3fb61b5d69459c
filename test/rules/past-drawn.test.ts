import { expect, it } from 'vitest';
import { isPastDrawn } from '@/lib/rules/past-drawn';

it.each([
  ['at the smallest that is drawn', 4994, 4994, 4998, false],
  ['below it', 4993, 4994, 4998, true],
  ['at the largest', 4998, 4994, 4998, false],
  ['above it', 4999, 4994, 4998, true],
  ['below, where only the largest is drawn', 1, null, 4998, false],
  ['above, where only the smallest is drawn', 9000, 4994, null, false],
])('a target %s', (_, targetPm, lowerPm, upperPm, past) => {
  expect(isPastDrawn(targetPm, { lowerPm, upperPm })).toBe(past);
});
