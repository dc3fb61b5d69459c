import { describe, expect, it } from 'vitest';
import { dotRadius } from '@/app/ui/charts/dot-radius';
import { paper, type Palette } from '@/app/ui/charts/palette';
import { heightRange, runChartConfig } from '@/app/ui/charts/run-chart-config';
import { runChartData } from '@/app/ui/charts/run-chart-data';
import { runMarksPlugin } from '@/app/ui/charts/run-marks-plugin';
import { jobView } from '@/lib/rules/job-view';
import type { RunView } from '@/lib/rules/run-view';
import { smallRun, smallRunSheet, type SmallRun } from '../../rules/small-run';

const palette: Palette = { ...paper, warm: 'warm', blue: 'blue' };
const plot = { left: 68, top: 8, right: 244, bottom: 380 };
const letterPx = 7;

type Line = { colour: unknown; width: unknown; points: [number, number][] };

/** What a run draws on a plot as large as that of a phone, where every letter is 7 wide. */
function drawn(small: SmallRun, area = plot) {
  return drawnOf(smallRun(small), area);
}

function drawnOf(view: RunView, area = plot) {
  const data = runChartData(view, { unit: 'mm', decimal: '.' });
  const lines: Line[] = [];
  const texts: { text: string; y: number; from: number; to: number }[] = [];
  const cleared: string[] = [];
  const pen: Record<string, unknown> = {};
  let path: [number, number][] = [];
  const acts: Record<string, (...given: never[]) => unknown> = {
    measureText: (text: string) => ({ width: letterPx * text.length }),
    beginPath: () => (path = []),
    moveTo: (x: number, y: number) => path.push([x, y]),
    lineTo: (x: number, y: number) => path.push([x, y]),
    stroke: () => lines.push({ colour: pen.strokeStyle, width: pen.lineWidth, points: path }),
    strokeText: (text: string) => cleared.push(text),
    fillText: (text: string, x: number, y: number) => {
      const width = letterPx * text.length;
      const share = { left: 0, start: 0, center: 0.5, right: 1 }[String(pen.textAlign)] ?? 0;
      texts.push({ text, y, from: x - share * width, to: x + (1 - share) * width });
    },
  };
  const ctx = new Proxy(pen, {
    get: (_, name) => acts[String(name)] ?? (() => undefined),
  });
  const { min, max } = heightRange(data);
  const along = runChartConfig(data, palette).options!.scales!['x'] as { min: number; max: number };
  const x = (turn: number) =>
    area.left + ((turn - along.min) / (along.max - along.min)) * (area.right - area.left);
  const y = (height: number) =>
    area.top + ((max - height) / (max - min)) * (area.bottom - area.top);
  const chart = {
    ctx,
    chartArea: area,
    scales: { x: { getPixelForValue: x }, y: { getPixelForValue: y } },
  };
  const plugin = runMarksPlugin(data, palette);
  plugin.beforeDatasetsDraw!(chart as never, {} as never, {} as never);
  const under = texts.map(({ text }) => text);
  plugin.afterDatasetsDraw!(chart as never, {} as never, {} as never, false);
  const warm = lines.filter(({ colour }) => colour === 'warm');
  return { data, texts, cleared, under, warm, x, y };
}

const rising = [-9, -7, -6, -4, -3, -1, 0, 2];
const limits = (lower: number, upper: number) => ({
  lowerPm: lower * 1_000_000,
  upperPm: upper * 1_000_000,
});

describe('the marks of a run chart', () => {
  it('draw the moment to act from the limit it is for, however far that is from the nominal', () => {
    const up = { sizes: rising.map((um) => um + 80), feature: limits(60, 90), of: 20 };
    const upper = drawn(up);
    const act = upper.warm.find(({ points: [a, b] }) => a![0] === b![0] && b![1] > plot.bottom)!;
    expect(act.points).toEqual([
      [upper.x(upper.data.actAfter! + 0.5), upper.y(90) + 14],
      [upper.x(upper.data.actAfter! + 0.5), plot.bottom + 20],
    ]);
    const down = { sizes: rising.map((um) => 80 - um), feature: limits(70, 100), of: 20 };
    const lower = drawn(down);
    expect(lower.data.crossing!.side).toBe('lower');
    expect(lower.warm[0]!.points.map(([, py]) => py)).toEqual([lower.y(70) + 14, plot.bottom + 20]);
  });

  it('say where it meets the limit within the plot, on two lines where one is too wide', () => {
    for (const sign of [1, -1]) {
      const { texts, cleared, under, y } = drawn({
        sizes: rising.map((um) => sign * um),
        feature: limits(-10, 10),
        of: 14,
      });
      const said = texts.filter(({ text }) => /limit|^W\d+ to|^at W/.test(text));
      expect(said.map(({ text }) => text).join(' ')).toMatch(
        sign > 0
          ? /^meets the upper limit, W\d+ to W\d+$/
          : /^meets the lower limit, W\d+ to W\d+$/,
      );
      expect(said).toHaveLength(2);
      // What is drawn there stops short of them.
      for (const { text } of said) expect(cleared).toContain(text);
      // They are there before the pieces, and hide none.
      for (const { text } of said) expect(under).toContain(text);
      expect(under.some((text) => text.startsWith('W8 '))).toBe(true);
      for (const one of said) {
        expect(one.from).toBeGreaterThan(plot.left);
        expect(one.to).toBeLessThan(plot.right);
        // Inside the far limit, and clear of it.
        expect(sign * (one.y - y(sign * -10))).toBeLessThan(-13);
      }
      expect(said[1]!.y - said[0]!.y).toBeCloseTo(18, 9);
    }
  });

  it('say it beside the crossing where there is room, with a leader to it', () => {
    const desk = { left: 68, top: 8, right: 768, bottom: 380 };
    for (const [sign, of] of [
      [1, 24],
      [-1, 24],
      [1, 16],
      [-1, 16],
    ] as const) {
      const { data, texts, warm, x, y } = drawn(
        { sizes: rising.map((um) => sign * um), feature: limits(-14, 14), of },
        desk,
      );
      const { first, height, words } = data.crossing!;
      const said = texts.find(({ text }) => text === words)!;
      expect(said.to).toBeCloseTo(x(first) - 16, 9);
      expect(said.from).toBeGreaterThan(desk.left);
      // Beyond the limit where the line goes on far enough, else inside it, as the limit is near the edge.
      const way = of === 24 ? -sign : sign;
      expect(said.y - y(height)).toBeCloseTo(way * 60, 9);
      expect(Math.min(said.y - desk.top, desk.bottom - said.y)).toBeGreaterThan(8);
      const [from, to] = warm.find(
        ({ points: [a, b] }) => a![0] !== b![0] && a![1] !== b![1],
      )!.points;
      expect(from).toEqual([said.to - 20, said.y - way * 12]);
      expect(to).toEqual([x(first) + 6, y(height) + way * 10]);
    }
  });

  it('draw nothing of a crossing beyond the plot, and still say where', () => {
    for (const sign of [1, -1]) {
      const { data, texts, warm, y } = drawn({
        sizes: rising.map((um) => sign * um),
        feature: limits(-22, 22),
        of: 12,
      });
      expect(data.crossing!.first).toBeGreaterThan(13);
      expect(warm).toEqual([]);
      // Inside the limit it meets, whose two lines these are.
      const said = texts.filter(({ text }) => /^meets the limit,|^W\d+ to/.test(text));
      expect(said.map(({ text }) => text)[0]).toBe('meets the limit,');
      const off = said.map(({ y: at }) => sign * (at - y(sign * 22)));
      expect(off.sort((a, b) => a - b)).toEqual([expect.closeTo(14, 6), expect.closeTo(32, 6)]);
    }
  });

  it('draw a crossing that ends beyond the plot up to its edge, without an end there', () => {
    const { data, warm, x } = drawn({ sizes: rising, feature: limits(-10, 14), of: 15 });
    expect(x(data.crossing!.first)).toBeLessThan(plot.right);
    expect(x(data.crossing!.last)).toBeGreaterThan(plot.right);
    const bar = warm.find(({ width }) => width === 5)!;
    expect(bar.points.map(([px]) => px)).toEqual([x(data.crossing!.first), plot.right]);
    expect(warm.filter(({ width }) => width === 3)).toHaveLength(1);
  });

  it('keep the names of two limits apart that nearly meet on the scale', () => {
    const named = (sizes: readonly number[]) => {
      const { texts } = drawn({ sizes, feature: limits(-10, 10) });
      const at = (name: string) => texts.find(({ text }) => text === name)!.y;
      return { apart: at('Lower') - at('Upper'), figures: at('11.990') - at('12.010') };
    };
    const { apart, figures } = named([1, 2, 900]);
    expect(apart).toBeCloseTo(36, 9);
    expect(figures).toBeCloseTo(36, 9);
    expect(named([1, 2, 3]).apart).toBeGreaterThan(200);
  });

  it('leave the name of the feature out of the label of the last piece where it has no room', () => {
    const named = (name: string) => {
      const sheet = smallRunSheet({ sizes: [-3, -2, -1], run: { alikeIds: ['pin'] }, of: 8 });
      const [boss] = sheet.features;
      const pin = { ...boss!, id: 'pin', name: 'Pin' };
      return drawnOf(jobView({ ...sheet, features: [{ ...boss!, name }, pin] }).runs[0]!).texts;
    };
    expect(named('Boss').some(({ text }) => text === 'W3 boss \u22120.001')).toBe(true);
    const long = named('Journal between the flywheel and the eccentric');
    const label = long.find(({ text }) => text.startsWith('W3 '))!;
    expect(label.text).toBe('W3 \u22120.001');
    expect(label.from).toBeGreaterThan(plot.left);
    expect(label.to).toBeLessThanOrEqual(plot.right);
  });

  it('keep the label of the last piece off the dots before it', () => {
    const { data, texts, x, y } = drawn({ sizes: rising, feature: limits(-20, 20) });
    const label = texts.find(({ text }) => text === 'W8 12.002')!;
    for (const { ordinal, height } of data.points) {
      const isBeside = x(ordinal) < label.from || x(ordinal) > label.to;
      expect(isBeside || Math.abs(y(height) - label.y) > 12, `dot ${ordinal}`).toBe(true);
    }
  });
});

describe('the radius of a dot', () => {
  const along = { min: 0.4, max: 20.4 };
  const at = (width: number) => dotRadius(5.5, along)({ chart: { chartArea: { width } } });

  it('is full where there is room, half of what one turn takes where there is less, and never nothing', () => {
    expect([at(800), at(220), at(160), at(80), at(20)]).toEqual([5.5, 5.5, 4, 2, 2]);
    expect(dotRadius(7, along)({ chart: {} })).toBe(7);
    expect(dotRadius(7, along)({ chart: { chartArea: { width: 110 } } })).toBe(3.5);
  });

  it('is that of the pieces and of the last one', () => {
    const data = runChartData(smallRun({ sizes: rising, of: 40 }), { unit: 'mm', decimal: '.' });
    const radius = (label: string, width: number) => {
      const set = runChartConfig(data, paper).data.datasets.find((one) => one.label === label)!;
      const asked = set.pointRadius as ReturnType<typeof dotRadius>;
      return asked({ chart: { chartArea: { width } } });
    };
    expect([radius('pieces', 900), radius('last piece', 900)]).toEqual([5.5, 7]);
    expect(radius('pieces', 176)).toBeLessThan(2.5);
    // Crowded too, the last stands out by more than its colour.
    expect(radius('last piece', 176) / radius('pieces', 176)).toBeCloseTo(7 / 5.5, 9);
  });
});
