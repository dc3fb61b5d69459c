import { describe, expect, it } from 'vitest';
import { labelLeft } from '@/app/ui/charts/label-left';

/** The plot of a phone of 360 px. */
const plot = { left: 68, right: 244 };

describe('the label of the last piece', () => {
  it('stands right of its point where the plot has room for it', () => {
    expect(labelLeft(100, 110, plot)).toBe(112);
    expect(labelLeft(122, 110, plot)).toBe(134);
  });

  it('stands left of it where only there is room', () => {
    expect(labelLeft(220, 110, plot)).toBe(98);
    expect(labelLeft(194, 110, plot)).toBe(72);
  });

  it('ends at the right edge of the plot where neither side has room, clear of the axis', () => {
    expect(labelLeft(193, 110, plot)).toBe(134);
    expect(labelLeft(123, 110, plot)).toBe(134);
    // Wider than the plot: it begins beside the axis.
    expect(labelLeft(150, 200, plot)).toBe(72);
  });
});
