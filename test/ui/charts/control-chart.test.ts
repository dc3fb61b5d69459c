import { describe, expect, it } from 'vitest';
import { controlChartConfig, controlHeightRange } from '@/app/ui/charts/control-chart-config';
import { controlChartData } from '@/app/ui/charts/control-chart-data';
import { paper } from '@/app/ui/charts/palette';
import { runChartConfig, heightRange } from '@/app/ui/charts/run-chart-config';
import { runChartData } from '@/app/ui/charts/run-chart-data';
import { controlView, type ControlChart } from '@/lib/rules/control-view';
import { oddPieces } from '@/lib/rules/odd-pieces';
import { correctionOf } from '../../rules/make';
import { smallRun, wander, type SmallRun } from '../../rules/small-run';

const mm = { unit: 'mm', decimal: '.' } as const;
function plots(small: SmallRun) {
  const view = smallRun(small);
  const chart = controlView(view) as ControlChart;
  expect(chart.kind).toBe('chart');
  return { view, chart, ...controlChartData(view, chart, mm) };
}

describe('controlChartData', () => {
  const sizes = wander(12, 1, -13).map((v, i) => (i === 4 ? null : v));
  const { chart, main, spread } = plots({ sizes, run: { control: 'single pieces' }, of: 16 });

  it('has each measured piece once, in order, and no other', () => {
    const points = main.lines.flat();
    expect(points.map(({ ordinal }) => ordinal)).toEqual([1, 2, 3, 4, 6, 7, 8, 9, 10, 11, 12]);
    points.forEach(({ height, ordinal }) => expect(height).toBeCloseTo(sizes[ordinal - 1]!, 9));
    expect(main.turns).toEqual({ end: 16, firstMark: 'W1', pieces: null });
  });

  it('draws the limits from half a turn before the first piece to half a turn after the last', () => {
    const [limits] = main.limits;
    expect([limits![0]!.ordinal, limits!.at(-1)!.ordinal]).toEqual([0.5, 12.5]);
    for (const { lower, centre, upper } of limits!) {
      expect(upper).toBeCloseTo(chart.main[0]!.upperMm * 1000, 9);
      expect(centre - lower).toBeCloseTo(upper - centre, 9);
    }
    expect(main.ends.map(({ name }) => name)).toEqual(['Upper', 'Middle', 'Lower']);
    expect(main.ends[1]!.label).toMatch(/^11\.98\d\d$/);
    expect(main.heightTitle).toBe('single pieces, from 12.000, in 0.001 mm');
    expect(spread!.heightTitle).toBe('moving ranges, in 0.001 mm');
  });

  it('joins nothing over an event that starts afresh, and breaks nothing at a break', () => {
    const parted = plots({
      sizes: wander(14, 1, -13),
      run: { control: 'single pieces' },
      events: [
        { kind: 'insert changed', afterOrdinal: 6 },
        { kind: 'break', afterOrdinal: 10 },
      ],
    });
    expect(parted.main.lines.map((line) => line.length)).toEqual([6, 8]);
    expect(parted.main.limits).toHaveLength(2);
    expect(parted.spread!.lines.map((line) => line.length)).toEqual([5, 7]);
    expect(parted.main.events.map(({ ordinal }) => ordinal)).toEqual([6.5, 10.5]);
  });

  it('marks the point at which a signal is complete, and for sums the side that passed', () => {
    const jump = wander(24, 1, -13).map((v, i) => (i === 20 ? v + 9 : v));
    const one = plots({ sizes: jump, run: { control: 'single pieces', baseTo: 20 } });
    const marked = one.main.lines.flat().filter(({ signal }) => signal);
    expect(marked.map(({ mark }) => mark)).toEqual(['W21']);

    const shift = wander(24, 1, -13).map((v, i) => (i >= 16 ? v - 4 : v));
    const sum = plots({ sizes: shift, run: { control: 'cusum', baseTo: 16 } });
    expect(sum.main.lines).toHaveLength(2);
    const [above, below] = sum.main.lines;
    expect(above!.some(({ signal }) => signal)).toBe(false);
    expect(below!.filter(({ signal }) => signal)).toHaveLength(1);
    expect(below!.every(({ height }) => height <= 0)).toBe(true);
    expect(sum.spread).toBeNull();
    expect(sum.main.heightTitle).toBe('sums, in 0.001 mm');
  });

  it('stands a group at its last piece, under its own name', () => {
    const grouped = plots({
      sizes: wander(15, 1, -13),
      run: { control: 'mean and range', together: 5 },
    });
    expect(grouped.main.lines.flat().map(({ ordinal, mark }) => `${ordinal} ${mark}`)).toEqual([
      '5 W1 to W5',
      '10 W6 to W10',
      '15 W11 to W15',
    ]);
  });
});

describe('controlChartConfig', () => {
  const jump = wander(24, 1, -13).map((v, i) => (i === 20 ? v + 9 : v));
  const { main, spread } = plots({ sizes: jump, run: { control: 'single pieces', baseTo: 20 } });
  const config = controlChartConfig(main, paper);
  const sets = (label: string) => config.data.datasets.filter((one) => one.label === label);

  it('puts every point in one dataset and a signal in another, told by its shape', () => {
    expect(sets('points')[0]!.data).toHaveLength(23);
    expect(sets('signals')[0]!.data.map(({ x }) => x)).toEqual([21]);
    expect(sets('signals')[0]).toMatchObject({ pointStyle: 'rectRot' });
    expect(sets('points')[0]).not.toHaveProperty('pointStyle');
  });

  it('draws three limits for each stretch, the middle one told by its dash', () => {
    for (const name of ['upper limit', 'centre limit', 'lower limit']) {
      expect(sets(name)).toHaveLength(1);
    }
    expect(sets('centre limit')[0]).toMatchObject({ borderDash: [14, 4, 3, 4] });
  });

  it('makes room for every point and limit of both plots', () => {
    for (const plot of [main, spread!]) {
      const { min, max } = controlHeightRange(plot);
      for (const { height } of plot.lines.flat()) {
        expect(height).toBeGreaterThan(min);
        expect(height).toBeLessThan(max);
      }
    }
  });

  it('has a scale before there is anything', () => {
    expect(controlHeightRange({ ...main, lines: [], limits: [] })).toEqual({ min: -1, max: 1 });
  });
});

describe('the run chart', () => {
  const line = wander(14, 0.4).map((off, i) => -20 + 0.7 * i + off);
  const sizes = line.map((v, i) => (i === 11 ? v - 8 : v));

  it('rings a piece that stands off the line, until somebody says that it is right', () => {
    const ringed = (small: SmallRun) => {
      const view = smallRun(small);
      return runChartData(view, mm, oddPieces(view).odd)
        .points.filter(({ odd }) => odd)
        .map(({ mark }) => mark);
    };
    expect(ringed({ sizes })).toEqual(['W12']);
    const right = () => [correctionOf(12, { kind: 'count', reason: 'twice measured' })];
    expect(ringed({ sizes, corrections: right })).toEqual([]);
    expect(ringed({ sizes: line })).toEqual([]);
  });

  it('shows what was set aside, and lets it move neither scale nor line', () => {
    const far = line.map((v, i) => (i === 11 ? v + 500 : v));
    const view = smallRun({
      sizes: far,
      corrections: () => [correctionOf(12, { kind: 'void', reason: 'a turn' })],
    });
    const data = runChartData(view, mm);
    expect(data.aside).toMatchObject([{ ordinal: 12, mark: 'W12' }]);
    expect(data.aside[0]!.height).toBeCloseTo(far[11]!, 6);
    expect(heightRange(data).max).toBeLessThan(30);
    expect(data.points.map(({ ordinal }) => ordinal)).not.toContain(12);
  });

  it('takes a hundred thousand points without running out of room', () => {
    const data = runChartData(smallRun({ sizes: line }), mm);
    const point = data.points[0]!;
    const points = Array.from({ length: 100_000 }, (_, i) => ({ ...point, ordinal: i + 1 }));
    expect(heightRange({ ...data, points }).min).toBeLessThan(-27);
    expect(runChartConfig({ ...data, points }, paper).data.datasets[1]!.data).toHaveLength(100_000);
  });
});
