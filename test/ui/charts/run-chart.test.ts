import { describe, expect, it } from 'vitest';
import { paper } from '@/app/ui/charts/palette';
import { heightRange, runChartConfig } from '@/app/ui/charts/run-chart-config';
import { runChartData, type RunChartData } from '@/app/ui/charts/run-chart-data';
import { runMarksPlugin } from '@/app/ui/charts/run-marks-plugin';
import { tickStep } from '@/app/ui/charts/tick-step';
import { jobView } from '@/lib/rules/job-view';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleSheet } from '../../rules/example-sheet';
import { smallRun } from '../../rules/small-run';

const mm = { unit: 'mm', decimal: '.' } as const;
const webs = [-9, -8, -5, -3, -21, -20, -17, -16, -14, -11, -10];
const runOf = (sheet: JobSheet) => jobView(sheet).runs[0]!;
const data = runChartData(runOf(exampleSheet()), mm);

/** The example with only some of the crank webs measured. */
function only(kept: (ordinal: number) => boolean): JobSheet {
  const sheet = exampleSheet();
  const left = new Set(
    sheet.pieces
      .filter(({ mark, ordinal }) => mark.startsWith('W') && !kept(ordinal))
      .map(({ id }) => id),
  );
  return { ...sheet, readings: sheet.readings.filter(({ pieceId }) => !left.has(pieceId)) };
}

describe('runChartData', () => {
  it('shows every measured piece at its departure from the nominal, and no other', () => {
    expect(data.points.map(({ height }) => height)).toEqual(webs);
    expect(data.points.map(({ ordinal }) => ordinal)).toEqual(webs.map((_, index) => index + 1));
    expect(data.heightTitle).toBe('from 12.000, in 0.001 mm');
  });

  it('draws the limits where the drawing has them', () => {
    expect(data.upper).toEqual({ height: 0, label: '12.000' });
    expect(data.lower).toEqual({ height: -27, label: '11.973' });
  });

  it('draws the aim between both limits, and by zones the quarter points', () => {
    expect(data.aim).toEqual({ height: -13.5, label: '11.986' });
    expect(data.quarters).toBeNull();
    const sheet = exampleSheet();
    const zones = { ...sheet, runs: sheet.runs.map((run) => ({ ...run, zones: true })) };
    expect(runChartData(runOf(zones), mm).quarters).toEqual({ low: -20.25, high: -6.75 });
    // The zones alone say when to act: the drift and where it leads are drawn all the same.
    expect(runChartData(runOf(zones), mm)).toMatchObject({ actAfter: null, crossing: {} });
    const open = { ...sheet, features: sheet.features.map((one) => ({ ...one, lowerPm: null })) };
    expect(runChartData(runOf(open), mm)).toMatchObject({ aim: null, lower: null });
  });

  it('begins the line after the insert was changed, not after tea', () => {
    expect(data.points.filter(({ earlier }) => earlier)).toHaveLength(4);
    expect(data.line![0]!.ordinal).toBeCloseTo(4.6, 9);
    expect(data.events.map(({ ordinal, title }) => [ordinal, title])).toEqual([
      [4.5, 'Insert changed'],
      [8.5, 'Break'],
    ]);
  });

  it('keeps the line inside its band everywhere', () => {
    for (const { low, height, high } of data.line!) {
      expect(low).toBeLessThan(height);
      expect(high).toBeGreaterThan(height);
    }
  });

  it('says where the band meets the limit and when to act', () => {
    expect(data.crossing!.first).toBeGreaterThan(14);
    expect(data.crossing!.first).toBeLessThan(data.crossing!.best);
    expect(data.crossing!.best).toBeLessThan(data.crossing!.last);
    expect(data.actAfter).toBe(14);
  });

  it('says one piece where the band meets the limit within one', () => {
    const sizes = [-9, -7.01, -5, -2.99, -1, 1, 3.01, 5];
    const feature = { lowerPm: -20_000_000, upperPm: 10_000_000 };
    const view = smallRun({ sizes, feature, of: 20 });
    const { crossing } = runChartData(view, mm);
    expect(Math.floor(crossing!.first) + 1).toBe(Math.ceil(crossing!.last));
    expect(crossing!.words).toBe('meets the limit at W11');
  });

  it('leaves gaps as gaps', () => {
    const gapped = runChartData(runOf(only((ordinal) => ordinal !== 7)), mm);
    expect(gapped.points.map(({ ordinal }) => ordinal)).toEqual([1, 2, 3, 4, 5, 6, 8, 9, 10, 11]);
  });

  it('draws dots and limits only when there are too few pieces', () => {
    const few = runChartData(runOf(only((ordinal) => ordinal <= 3)), mm);
    expect(few.points).toHaveLength(3);
    expect(few.line).toBeNull();
    expect(few.crossing).toBeNull();
    expect(few.actAfter).toBeNull();
  });

  it('has a chart to show before anything is measured', () => {
    const none = runChartData(runOf(only(() => false)), mm);
    expect(none.points).toEqual([]);
    expect(heightRange(none).min).toBeLessThan(-27);
  });

  it('counts in ten-thousandths when the job is shown in inches', () => {
    const inches = runChartData(runOf(exampleSheet()), { unit: 'in', decimal: '.' });
    expect(inches.heightTitle).toBe('from 0.4724, in 0.0001 inch');
    expect(inches.points[0]!.height).toBeCloseTo(-9 / 2.54, 9);
  });
});

describe('runChartConfig', () => {
  const config = runChartConfig(data, paper);
  const set = (label: string) => config.data.datasets.find((one) => one.label === label)!;

  it('puts each piece in one dataset and none in two', () => {
    const pieces = ['pieces before the last event', 'pieces', 'last piece'].map((label) =>
      set(label).data.map((point) => point.x),
    );
    expect(pieces).toEqual([[1, 2, 3, 4], [5, 6, 7, 8, 9, 10], [11]]);
  });

  it('draws the line whole to the last piece and dashed beyond', () => {
    expect(set('drift line').data.at(-1)!.x).toBe(11);
    expect(set('drift line, forecast').data[0]!.x).toBe(11);
    expect(set('drift line, forecast')).toMatchObject({ borderDash: [9, 6] });
  });

  it('animates nothing and shows no legend', () => {
    expect(config.options).toMatchObject({
      animation: false,
      plugins: { legend: { display: false }, tooltip: { enabled: false } },
    });
  });

  it('makes room for the limits and the bars', () => {
    const { min, max } = heightRange(data);
    expect(min).toBeLessThan(-27);
    expect(max).toBeGreaterThan(0);
  });
});

describe('tickStep', () => {
  it.each([
    [0.3, 1, 1],
    [1.2, 1, 2],
    [3, 1, 5],
    [6, 1, 10],
    [51, 1, 100],
    [0.3, 0.1, 0.5],
  ])('for at least %f in units of %f gives %f', (least, unit, step) => {
    expect(tickStep(least, unit)).toBeCloseTo(step, 12);
  });
});

describe('the lane of events', () => {
  /** What is written under the axis, with its middle, on a canvas whose letters are 7 wide. */
  function written(events: RunChartData['events'], width = 320) {
    const said: { text: string; x: number }[] = [];
    const ctx = new Proxy({} as Record<string, unknown>, {
      get: (_, name) =>
        name === 'measureText'
          ? (text: string) => ({ width: 7 * text.length })
          : name === 'fillText'
            ? (text: string, x: number) => said.push({ text, x })
            : () => undefined,
      set: () => true,
    });
    const scale = (px: (value: number) => number) => ({ getPixelForValue: px });
    const chart = {
      ctx,
      chartArea: { left: 0, right: width, top: 0, bottom: 200, width, height: 200 },
      scales: { x: scale((value) => (width * value) / 16), y: scale((value) => -4 * value) },
    };
    const plugin = runMarksPlugin({ ...data, events }, paper);
    plugin.beforeDatasetsDraw!(chart as never, {} as never, {} as never);
    return said;
  }

  it('names the moment to act whatever else stands there, and nothing over it', () => {
    const long = { ordinal: 14.5, title: 'Offset moved', note: 'x'.repeat(120) };
    const texts = written([long]).map(({ text }) => text);
    expect(texts).toContain('Act here');
    expect(texts).not.toContain('Offset moved');
  });

  it('shortens what is too long, and keeps it on the canvas', () => {
    const early = { ordinal: 0.5, title: 'Offset moved', note: 'x'.repeat(120) };
    const note = written([early]).find(({ text }) => text.startsWith('x'))!;
    expect(note.text).toMatch(/^x+\u2026$/);
    expect(7 * note.text.length).toBeLessThanOrEqual(170);
    expect(note.x - (7 * note.text.length) / 2).toBeGreaterThanOrEqual(0);
  });
});
