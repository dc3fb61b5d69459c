import { describe, expect, it } from 'vitest';
import { spokenLength } from '@/lib/text/spoken-length';

// Figure by figure, the unit last: common practice, no source.
const um = 1_000_000;
const inch = 25_400_000_000;

describe('spokenLength', () => {
  it.each([
    [17_995 * um, um, 'mm', 'one seven point nine nine five millimetres'],
    [18_000 * um, um, 'mm', 'one eight point zero zero zero millimetres'],
    [52_030 * um, 10 * um, 'mm', 'five two point zero three millimetres'],
    [-3 * um, um, 'mm', 'minus zero point zero zero three millimetres'],
    [0.9837 * inch, 2_540_000, 'in', 'point nine eight three seven inches'],
    [1.2505 * inch, 2_540_000, 'in', 'one point two five zero five inches'],
    [-0.0005 * inch, 2_540_000, 'in', 'minus point zero zero zero five inches'],
    [12_000 * um, 1_000 * um, 'mm', 'one two millimetres'],
  ] as const)('reads %i pm to %i pm in %s', (pm, step, unit, words) => {
    expect(spokenLength(pm, step, unit)).toBe(words);
  });
});
