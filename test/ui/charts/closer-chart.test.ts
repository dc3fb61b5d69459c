import { describe, expect, it } from 'vitest';
import { closerChartConfig, type MarkedDataset } from '@/app/ui/charts/closer-chart-config';
import { closerChartData, type CloserFacts } from '@/app/ui/charts/closer-chart-data';
import { paper } from '@/app/ui/charts/palette';
import { moved, wholeWindow, within, zoomed } from '@/app/ui/charts/window';

const um = 1_000_000;
const nominalPm = 18_000 * um;
const mm = { unit: 'mm', decimal: '.' } as const;
const facts = (
  sizesUm: readonly (number | null)[],
  over: Partial<CloserFacts> = {},
): CloserFacts => {
  const measured = sizesUm.flatMap((size, i) => (size === null ? [] : [[i + 1, size] as const]));
  return {
    ordinals: measured.map(([ordinal]) => ordinal),
    sizesPm: measured.map(([, size]) => nominalPm + size * um),
    nominalPm,
    lowerPm: nominalPm,
    upperPm: nominalPm + 18 * um,
    events: [],
    marks: null,
    last: sizesUm.length,
    ...over,
  };
};
const whole = (of: CloserFacts, columns = 100) =>
  closerChartData(of, wholeWindow(of.last), columns, mm);

describe('closerChartData', () => {
  it('draws every piece of a short stretch, in order, with what is outside marked', () => {
    const data = whole(facts([4, 19, null, -1]));
    expect(data.points).toEqual([
      { ordinal: 1, height: 4, outside: false },
      { ordinal: 2, height: 19, outside: true },
      { ordinal: 4, height: -1, outside: true },
    ]);
    expect(data).toMatchObject({
      dense: false,
      heightTitle: 'from 18.000, in 0.001 mm',
      lower: { height: 0, label: '18.000' },
      upper: { height: 18, label: '18.018' },
      seen: { count: 3, least: 2, most: 1 },
    });
  });

  it('keeps its height while one moves along, and holds limits and every piece', () => {
    const long = facts(Array.from({ length: 5000 }, (_, i) => (i === 4000 ? -30 : i % 9)));
    const here = closerChartData(long, { from: 0.5, to: 100.5 }, 50, mm);
    const there = closerChartData(long, { from: 3950.5, to: 4050.5 }, 50, mm);
    expect(here.range).toEqual(there.range);
    expect(here.range.min).toBeLessThan(-30);
    expect(here.range.max).toBeGreaterThan(18);
    expect(there.points.map(({ height }) => height)).toContain(-30);
  });

  it('has something to draw of nothing', () => {
    const none = whole(facts([null, null], { lowerPm: null, upperPm: null }));
    expect(none).toMatchObject({ points: [], seen: null, range: { min: -1, max: 1 } });
  });

  it('shows the events of the stretch, between the pieces they came between', () => {
    const event = (afterOrdinal: number) => ({
      afterOrdinal,
      kind: 'insert changed' as const,
      note: '',
      at: '2026-11-25T09:00:00Z',
    });
    const of = facts([1, 2, 3, 4], { events: [event(2), event(40)] });
    expect(whole(of).events).toEqual([{ ordinal: 2.5, title: 'Insert changed' }]);
  });
});

describe('closerChartConfig', () => {
  const dataOf = (data: ReturnType<typeof whole>) =>
    closerChartConfig(data, paper).data.datasets.map((set) => set.data);

  it('draws pieces as points, those outside in another shape, on fixed scales', () => {
    const data = whole(facts([4, 19]));
    const config = closerChartConfig(data, paper);
    expect(dataOf(data)).toEqual([
      [
        { x: 1, y: 4 },
        { x: 2, y: 19 },
      ],
      [{ x: 2, y: 19 }],
    ]);
    expect(config.options!.scales!['x']).toMatchObject({ min: 0.5, max: 2.5 });
    expect(config.options!.scales!['y']).toMatchObject(data.range);
    expect((config.data.datasets[0] as MarkedDataset).showLine).toBe(false);
  });

  it('leaves a line open where nobody measured, and makes no point up', () => {
    const sizes = Array.from({ length: 4000 }, (_, i) => (i >= 1000 && i < 2000 ? null : i % 5));
    const data = whole(facts(sizes), 40);
    expect(data.dense).toBe(true);
    const [line] = dataOf(data) as { x: number; y: number }[][];
    const breaks = line!.filter(({ y }) => Number.isNaN(y));
    expect(breaks).toEqual([{ x: 1000, y: NaN }]);
    const drawn = line!.filter(({ y }) => !Number.isNaN(y));
    expect(drawn.every(({ x, y }) => sizes[x - 1] === y)).toBe(true);
  });

  it('keeps one plugin, so that a chart is changed and not made anew', () => {
    const [one, two] = [whole(facts([1])), whole(facts([2]))];
    expect(closerChartConfig(one, paper).plugins![0]).toBe(
      closerChartConfig(two, paper).plugins![0],
    );
  });
});

describe('the window', () => {
  it('stays within the run and never nearer than eight pieces', () => {
    expect(within({ from: -50, to: 20 }, 100)).toEqual({ from: 0.5, to: 70.5 });
    expect(within({ from: 90, to: 130 }, 100)).toEqual({ from: 60.5, to: 100.5 });
    expect(within({ from: 40, to: 41 }, 100)).toEqual({ from: 36.5, to: 44.5 });
    expect(within({ from: -10, to: 500 }, 100)).toEqual(wholeWindow(100));
    expect(within({ from: 1, to: 2 }, 3)).toEqual({ from: 0.5, to: 3.5 });
  });

  it('looks nearer about the place that is pointed at', () => {
    const near = zoomed({ from: 0.5, to: 100.5 }, 0.5, 25.5, 100);
    expect(near).toEqual({ from: 13, to: 63 });
    expect(zoomed(near, 2, 25.5, 100)).toEqual(wholeWindow(100));
  });

  it('moves along and stops at the ends', () => {
    const seen = { from: 20.5, to: 40.5 };
    expect(moved(seen, 0.25, 100)).toEqual({ from: 25.5, to: 45.5 });
    expect(moved(seen, -2, 100)).toEqual({ from: 0.5, to: 20.5 });
    expect(moved(seen, Infinity, 100)).toEqual({ from: 80.5, to: 100.5 });
    expect(moved(seen, -Infinity, 100)).toEqual({ from: 0.5, to: 20.5 });
  });
});
