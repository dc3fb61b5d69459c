import { describe, expect, it } from 'vitest';
import { columnSpan } from '@/app/ui/strip/small-strip-layout';
import type { StripData } from '@/app/ui/strip/strip-data';
import { stripLayout } from '@/app/ui/strip/strip-layout';
import { mm, smallVariants } from '../gallery/strips';

// Section 6 of look.md, "Small": 18 high, band 4 to 14, no ticks, numerals, dots or guard.

const shapesOf = (data: StripData) => stripLayout(data, 'small', 100).shapes;
const find = (data: StripData, role: string) => shapesOf(data).find((shape) => shape.role === role);
const variant = (name: string) => smallVariants[name]!;
const roles = (data: StripData) => shapesOf(data).map(({ role }) => role);

describe('smallStripLayout', () => {
  it('shows the limits and half a band at each side: the band takes the middle half', () => {
    expect(find(variant('Inside'), 'band')).toMatchObject({ x: 25, y: 4, width: 50, height: 10 });
    const posts = shapesOf(variant('Inside')).filter(({ role }) => role === 'post');
    expect(posts.map((post) => post.kind === 'line' && post.x1)).toEqual([25, 75]);
  });

  it('has no ticks, numerals, dots, labels or guard', () => {
    const data: StripData = {
      ...variant('Inside'),
      guardPm: mm(0.001),
      readings: [{ valuePm: mm(18.008), state: 'counted', last: true }],
    };
    expect(new Set(roles(data))).toEqual(new Set(['band', 'baseline', 'post', 'bar', 'mark']));
    expect(stripLayout(data, 'small', 100).ladder).toBeNull();
  });

  it('stands the mark where the size is, its bar at least 5 wide', () => {
    // 18.008 is 17 of 36 thousandths from 17.991.
    expect(find(variant('Inside'), 'mark')).toMatchObject({ x: 1700 / 36 - 1.25, width: 2.5 });
    const fine: StripData = {
      ...variant('Inside'),
      size: { valuePm: mm(18.009), expandedPm: 1, state: 'inside' },
    };
    expect(find(fine, 'bar')).toMatchObject({ x: 47.5, width: 5, height: 3 });
  });

  it('makes an unsure size hollow and 5 high, an out size warm', () => {
    expect(find(variant('Unsure'), 'barUnsure')).toMatchObject({ height: 5 });
    expect(roles(variant('Out, small'))).toContain('markOut');
  });

  it('points off the end with a plate, blue for stock', () => {
    expect(find(variant('Off the strip'), 'plate')).toMatchObject({ d: 'M91 4.5L100 9L91 13.5Z' });
    expect(roles(variant('Off the strip'))).not.toContain('mark');
    expect(roles(variant('Stock to cut'))).toContain('plateLive');
    const low: StripData = {
      ...variant('Inside'),
      size: { valuePm: mm(17.9), expandedPm: 0, state: 'out' },
    };
    expect(find(low, 'plate')).toMatchObject({ d: 'M9 4.5L0 9L9 13.5Z' });
  });

  it('stands a size without limits in the middle, and points nowhere', () => {
    const size = { valuePm: mm(24.975), expandedPm: mm(0.001), state: null };
    const data = { ...variant('Inside'), lowerPm: null, upperPm: null, size };
    expect(find(data, 'mark')).toMatchObject({ x: expect.closeTo(50 - 1.25) as number });
    expect(roles(data)).toEqual(['baseline', 'bar', 'mark']);
  });

  it('raises no plate for a held reading: it has no size', () => {
    const held: StripData = {
      ...variant('Held'),
      readings: [{ valuePm: mm(18.498), state: 'held', last: true }],
    };
    expect(new Set(roles(held))).toEqual(new Set(['band', 'baseline', 'post']));
  });

  it('cuts the notch 8 wide and 6 high, and draws the partner 3 high along the top', () => {
    expect(find(variant('To make'), 'notch')).toMatchObject({ d: 'M46 14L50 8L54 14Z' });
    expect(find(variant('With partner'), 'partner')).toMatchObject({ y: 0.5, height: 3 });
  });

  it('has a band to the end of the strip where one side is open, and none without limits', () => {
    const open = { ...variant('Inside'), lowerPm: null };
    expect(find(open, 'band')).toMatchObject({ x: 0 });
    expect(roles({ ...open, upperPm: null })).not.toContain('band');
  });

  it('is 24 high in the card', () => {
    expect(stripLayout(variant('Inside'), 'card', 354).heightPx).toBe(24);
    expect(stripLayout(variant('Inside'), 'small', 354).heightPx).toBe(18);
  });

  it('holds one span for a whole column', () => {
    const rows = [
      { ...variant('Inside'), lowerPm: mm(18), upperPm: mm(18.018) },
      { ...variant('Inside'), lowerPm: mm(18.004), upperPm: mm(18.014) },
    ];
    const spanPm = columnSpan(rows);
    expect(spanPm).toEqual({ fromPm: mm(17.991), toPm: mm(18.027) });
    expect(find({ ...rows[1]!, spanPm }, 'band')).toMatchObject({ x: 1300 / 36 });
  });
});
