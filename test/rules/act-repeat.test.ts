import { expect, it } from 'vitest';
import { isActRepeat } from '@/lib/rules/act-repeat';

const first = { what: 'take back', atMs: 1000 };

it.each([
  ['at once', { what: 'take back', atMs: 1000 }, true],
  ['a bounce later', { what: 'take back', atMs: 1399 }, true],
  ['as soon as a foot can', { what: 'take back', atMs: 1400 }, false],
  ['before it, by a clock that was set back', { what: 'take back', atMs: 999 }, false],
  ['another act at once', { what: 'next', atMs: 1000 }, false],
])('the same again %s', (_, now, repeats) => {
  expect(isActRepeat(first, now)).toBe(repeats);
});

it('is none where nothing was done before', () => {
  expect(isActRepeat(null, first)).toBe(false);
});
