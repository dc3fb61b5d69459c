import { describe, expect, it } from 'vitest';
import { labelPlace } from '@/app/ui/charts/label-place';

/** The plot of a phone of 360 px. */
const plot = { left: 68, right: 244 };
const placed = (x: number, width: number, marks: { x: number; y: number }[] = []) =>
  labelPlace({ x, y: 50 }, width, plot, marks);

describe('the label of the last piece', () => {
  it('stands right of its point and under it where the plot has room for it', () => {
    expect(placed(100, 110)).toEqual({ x: 112, y: 66 });
    expect(placed(122, 110)).toEqual({ x: 134, y: 66 });
  });

  it('stands left of it where only there is room', () => {
    expect(placed(220, 110)).toEqual({ x: 98, y: 66 });
    expect(placed(194, 110)).toEqual({ x: 72, y: 66 });
  });

  it('ends at the right edge of the plot where neither side has room, clear of the axis', () => {
    expect(placed(193, 110)).toEqual({ x: 134, y: 66 });
    expect(placed(123, 110)).toEqual({ x: 134, y: 66 });
    // Wider than the plot: it begins beside the axis.
    expect(placed(150, 200)).toEqual({ x: 72, y: 66 });
  });

  it('goes over its point where dots or the line are under it, and to the other side where both are', () => {
    // Falling: the line goes on to the right and down.
    expect(placed(100, 40, [{ x: 120, y: 64 }])).toEqual({ x: 112, y: 34 });
    expect(
      placed(130, 40, [
        { x: 150, y: 64 },
        { x: 150, y: 40 },
      ]),
    ).toEqual({ x: 78, y: 66 });
    // Rising into a corner: the dots before it are on the left and lower.
    expect(placed(220, 110, [{ x: 190, y: 60 }])).toEqual({ x: 98, y: 34 });
    // A dot just clear of the label is none in its way.
    expect(placed(100, 40, [{ x: 120, y: 81 }]).y).toBe(66);
    expect(placed(100, 40, [{ x: 159, y: 66 }]).y).toBe(66);
    expect(placed(100, 40, [{ x: 157, y: 66 }]).y).toBe(34);
  });

  it('lies over the fewest where none is free', () => {
    const under = { x: 150, y: 66 };
    const over = [34, 36].map((y) => ({ x: 150, y }));
    expect(placed(193, 110, [under, ...over])).toEqual({ x: 134, y: 66 });
    expect(placed(193, 110, [under, { ...under, x: 160 }, over[0]!])).toEqual({ x: 134, y: 34 });
  });
});
