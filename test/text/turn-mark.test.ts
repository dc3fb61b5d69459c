import { expect, it } from 'vitest';
import { turnMark } from '@/lib/text/turn-mark';

const marked = (...marks: string[]) => marks.map((mark, i) => ({ mark, ordinal: i + 1 }));

it('calls a turn by its mark, and one beyond the batch as it would be marked', () => {
  expect(turnMark(marked('W1', 'W2'), 2)).toBe('W2');
  expect(turnMark(marked('W1', 'W2'), 18)).toBe('W18');
});

it('counts the turns beyond where a mark says more than a number', () => {
  const turns = marked('Q1 outside', 'Q1 seat');
  expect(turnMark(turns, 2)).toBe('Q1 seat');
  expect(turnMark(turns, 18)).toBe('turn 18');
});
