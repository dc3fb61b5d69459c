import { expect, it } from 'vitest';
import { sameContent } from '@/lib/store/same-content';

// Each row: what is said, what stands in the book, and whether they agree.
it.each([
  [{ name: 'Ram', places: [1, 2] }, { name: 'Ram', places: [1, 2], version: 3 }, true],
  [{ name: 'Ram' }, { name: 'ram' }, false],
  [{ name: 'Ram', places: [1, 2] }, { name: 'Ram', places: [2, 1] }, false],
  [{ name: null }, { name: 'Ram' }, false],
  // Made by a notebook that had no such field yet; the rest still has to agree.
  [{ name: 'Ram', weightG: 12 }, { name: 'Ram' }, true],
  [{ name: 'Rod', weightG: 12 }, { name: 'Ram' }, false],
] as const)('of %j and %j in the book: %s', (said, row, agrees) => {
  expect(sameContent(said, row)).toBe(agrees);
});
