import { describe, expect, it } from 'vitest';
import { hotColdLayout } from '@/app/ui/hot-cold/hot-cold-layout';
import type { HotCold } from '@/lib/rules/heat/hot-cold';

// Invented clearances: a pair that loses 8 of its 10 micrometres when the inner piece alone goes to 60.
const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const hot: HotCold = {
  soaked: [0, 20, 40, 60, 80].map((temperatureC) => ({ temperatureC, clearancePm: 10 * um })),
  tightestSoaked: { temperatureC: 0, clearancePm: 10 * um },
  bad: { outerC: 20, innerC: 60, clearancePm: 2 * um },
  tight: 'bad',
  badBetween: { lowPm: um, highPm: 3 * um },
  tenMore: { bothPm: 0, innerPm: -2 * um },
  touchesHotterByC: 50,
  touchesSoakedC: null,
};
const fit = { minPm: 8 * um, maxPm: 12 * um };
const size = { width: 600, height: 300 };

describe('hotColdLayout', () => {
  it.each([240, 296, 600, 900])('draws nothing outside itself at %i wide', (width) => {
    const at = hotColdLayout(hot, fit, mm, { width, height: 260 });
    const inside = ({ x, y }: { x: number; y: number }) =>
      x >= at.plot.left && x <= at.plot.right && y >= at.plot.top && y <= at.plot.bottom;
    expect([...at.soaked, ...at.apart, at.bad, at.tight].every(inside)).toBe(true);
    expect(at.band.top).toBeGreaterThanOrEqual(at.plot.top);
    expect(at.band.bottom).toBeLessThanOrEqual(at.plot.bottom);
    const gaps = at.ticksX.slice(1).map(({ x }, i) => x - at.ticksX[i]!.x);
    expect(gaps.every((gap) => gap >= 64)).toBe(true);
  });

  it('is to scale: hotter to the right, more clearance above', () => {
    const at = hotColdLayout(hot, fit, mm, size);
    expect(at.bad.y).toBeGreaterThan(at.band.bottom);
    const perDegree = (at.soaked[4]!.x - at.soaked[0]!.x) / 80;
    expect(at.bad.x - at.soaked[0]!.x).toBeCloseTo(60 * perDegree, 6);
    const perMicron = (at.band.bottom - at.band.top) / 4;
    expect(at.bad.y - at.soaked[0]!.y).toBeCloseTo(8 * perMicron, 6);
  });

  it('lets the inner piece leave the line of both where the outer stays', () => {
    const at = hotColdLayout(hot, fit, mm, size);
    expect(at.apart[0]).toEqual(at.soaked[1]);
    expect(at.apart[1]).toEqual(at.bad);
  });

  it('marks the tightest, and says it in words above everything that is drawn', () => {
    const at = hotColdLayout(hot, fit, mm, { width: 296, height: 260 });
    expect(at.tight).toEqual(at.bad);
    expect(at.tightLabel.text).toBe('tightest, 0.002 clear');
    expect(at.tightLabel.y).toBeGreaterThan(at.plot.top);
    const drawn = [at.band.top, ...[...at.soaked, ...at.apart].map(({ y }) => y)];
    expect(Math.min(...drawn)).toBeGreaterThan(at.tightLabel.y + 8);
    const soaked = hotColdLayout({ ...hot, tight: 'soaked' }, fit, mm, size);
    expect(soaked.tight).toEqual(soaked.soaked[0]);
    expect(soaked.tightLabel.text).toBe('tightest, 0.010 clear');
  });

  it('shows where the two touch only while that is on the chart', () => {
    const tight = { ...hot, bad: { ...hot.bad, clearancePm: -um } };
    const at = hotColdLayout(tight, fit, mm, size);
    expect(at.touching).toBeLessThan(at.bad.y);
    expect(at.touching).toBeGreaterThan(at.band.bottom);
    const far = { ...hot, bad: { ...hot.bad, clearancePm: 9 * um } };
    expect(hotColdLayout(far, fit, mm, size).touching).toBeNull();
  });

  it('has ticks in steps of the unit shown', () => {
    const inch = hotColdLayout(hot, fit, { unit: 'in', decimal: ',' }, size);
    expect(inch.ticksY.every(({ text }) => /^\u2212?0,\d{4}$/.test(text))).toBe(true);
    expect(new Set(inch.ticksY.map(({ text }) => text)).size).toBe(inch.ticksY.length);
  });

  it('draws one temperature, and no clearance at all, without dividing by nothing', () => {
    const flat = {
      ...hot,
      soaked: hot.soaked.slice(1, 2),
      bad: { outerC: 20, innerC: 20, clearancePm: 10 * um },
    };
    const at = hotColdLayout(flat, { minPm: 10 * um, maxPm: 10 * um }, mm, size);
    expect(Object.values(at.bad).every(Number.isFinite)).toBe(true);
    expect(at.apart[0]).toEqual(at.apart[1]);
  });
});
