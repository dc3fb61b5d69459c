import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FitRole } from '@/app/ui/fit-rules/fit-role';
import type { FitRulesData } from '@/app/ui/fit-rules/fit-rules-data';
import { fitRulesLayout, type FitRulesOptions } from '@/app/ui/fit-rules/fit-rules-layout';
import type { Shape } from '@/app/ui/strip/shape';
import { textWidth } from '@/app/ui/strip/text-width';
import { fanFit, manyFit } from '../gallery/fit';
import { mm } from '../gallery/strips';

// What is drawn is that of the drawing `fits` and "Two-sided" in section 6 of look.md.

const width = 1198;
type Line = Extract<Shape<FitRole>, { kind: 'line' }>;
const shapesOf = (data: FitRulesData, options: FitRulesOptions = {}, widthPx = width) =>
  fitRulesLayout(data, widthPx, options).shapes;
const lines = (data: FitRulesData, ...roles: FitRole[]) =>
  shapesOf(data).filter(
    (shape): shape is Line => shape.kind === 'line' && roles.includes(shape.role),
  );
const texts = (data: FitRulesData, ...roles: FitRole[]) =>
  shapesOf(data).flatMap((shape) =>
    shape.kind === 'text' && roles.includes(shape.role) ? [shape.text] : [],
  );
const baselines = () => lines(fanFit, 'baseline');

describe('fitRulesLayout', () => {
  it('draws two rules 70 apart, ticks up on the internal one and down on the external', () => {
    const [upper, lower] = baselines();
    expect(lower!.y1 - upper!.y1).toBe(70);
    const ticks = lines(fanFit, 'tick', 'tickMajor');
    for (const { y1, y2 } of ticks) {
      expect([upper!.y1, lower!.y1]).toContain(y1);
      expect(Math.sign(y2 - y1)).toBe(y1 === upper!.y1 ? -1 : 1);
    }
    for (const { x1 } of ticks) {
      expect(x1).toBeGreaterThanOrEqual(upper!.x1 - 1e-6);
      expect(x1).toBeLessThanOrEqual(upper!.x2 + 1e-6);
    }
  });

  it('stands a pair at the aim plumb, and leans by what it is off', () => {
    const { pxPerPm } = fitRulesLayout(fanFit, width).scale;
    const leans = lines(fanFit, 'tie').map(({ x1, x2 }) => (x1 - x2) / pxPerPm / mm(0.001));
    // L1-P1, L2-P2, L3-P6, L4-P4 at 0.010; L5-P5 at 0.009 leans right, L6-P3 at 0.011 leans left.
    [0, 0, 0, 0, -1, 1].forEach((lean, index) => expect(leans[index]).toBeCloseTo(lean, 6));
  });

  it('writes each clearance beside its tie, in thousandths', () => {
    expect(texts(fanFit, 'clearance')).toEqual(['10', '10', '10', '10', '9', '11']);
  });

  it('writes interference with a minus', () => {
    const tight = { ...fanFit.ties[0]!, clearancePm: mm(-0.002), state: 'out' as const };
    expect(texts({ ...fanFit, ties: [tight] }, 'clearanceOut')).toEqual(['\u22122']);
  });

  it('shows an out pair warm, and an unsure one warm in a box', () => {
    const [tie] = fanFit.ties;
    const out = { ...fanFit, ties: [{ ...tie!, state: 'out' as const }] };
    expect(lines(out, 'tieOut')).toHaveLength(1);
    const unsure = { ...fanFit, ties: [{ ...tie!, state: 'unsure' as const }] };
    expect(lines(unsure, 'tieUnsure')).toHaveLength(1);
    expect(shapesOf(unsure).filter(({ role }) => role === 'unsureBox')).toHaveLength(1);
  });

  it('joins what is to make to a notch at its target, dashed, with its mark in blue', () => {
    expect(texts(fanFit, 'markLive')).toEqual(['P7', 'P8']);
    expect(lines(fanFit, 'toMakeLine').map(({ x1, x2 }) => x1 - x2)).toEqual([
      expect.closeTo(0, 6),
      expect.closeTo(0, 6),
    ]);
    const notches = shapesOf(fanFit).filter(({ role }) => role === 'toMakeNotch');
    const [, lower] = baselines();
    const [line] = lines(fanFit, 'toMakeLine');
    expect(notches[0]).toMatchObject({
      d: `M${line!.x2 - 8} ${lower!.y1}L${line!.x2} ${lower!.y1 + 13}L${line!.x2 + 8} ${lower!.y1}Z`,
    });
  });

  it('stands every measured piece on its rule, 24 high, and none that is to make', () => {
    const uprights = lines(fanFit, 'upright');
    expect(uprights).toHaveLength(14);
    for (const { y1, y2 } of uprights) expect(Math.abs(y2 - y1)).toBe(24);
  });

  it('alternates the bars between two heights, so that touching neighbours do not merge', () => {
    const bars = shapesOf(fanFit).filter((shape) => shape.role === 'bar');
    const boxes = bars.map((bar) => (bar.kind === 'rect' ? bar : undefined)!);
    for (const a of boxes) {
      for (const b of boxes) {
        const meet = a.x < b.x && b.x <= a.x + a.width + 1;
        if (meet) expect(a.y).not.toBe(b.y);
      }
    }
    expect(new Set(boxes.map(({ y }) => y)).size).toBe(4);
  });

  it('says how many times full size it is: 43.6 px to 0.001 mm is 11 536', () => {
    // A CSS px is 1/96 in (CSS Values and Units, 5.2): 43.6e3 px a mm x 25.4 / 96 = 11 535.8.
    const { timesFullSize, scale } = fitRulesLayout(fanFit, width);
    expect(timesFullSize / (scale.pxPerPm * 1e9)).toBeCloseTo(25.4 / 96, 10);
    expect(43_600 * (timesFullSize / (scale.pxPerPm * 1e9))).toBeCloseTo(11_535.8, 1);
  });

  it('names both sides with the unit once, and says how far the lower one is slid', () => {
    expect(texts(fanFit, 'title', 'subtitle')).toEqual([
      'Liners',
      'bore, mm',
      'in 0.001 mm',
      'Pistons',
      'slid 0.010',
    ]);
  });

  it('puts marks in lanes when there are more than twelve', () => {
    const heightOf = (data: FitRulesData) =>
      new Set(
        shapesOf(data).flatMap((shape) =>
          shape.kind === 'text' && shape.role === 'mark' ? [shape.y] : [],
        ),
      ).size;
    expect(heightOf({ ...fanFit, toMake: [] })).toBe(2);
    expect(heightOf(manyFit)).toBe(6);
  });

  it('gives leaders more height where marks had to move far, so that none lies flat', () => {
    const heightOf = (data: FitRulesData, widthPx: number) =>
      fitRulesLayout(data, widthPx).heightPx;
    expect(heightOf(manyFit, 700)).toBeGreaterThan(heightOf(manyFit, 1300));
    const slopes = shapesOf(manyFit, {}, 700).flatMap((shape) => {
      if (shape.kind !== 'path' || shape.role !== 'leader') return [];
      const [x2, y2] = shape.d
        .match(/([\d.]+) ([\d.]+)$/)!
        .slice(1)
        .map(Number);
      const [x1, y1] = shape.d
        .match(/([\d.]+) ([\d.]+)L[\d.]+ [\d.]+$/)!
        .slice(1)
        .map(Number);
      return [Math.abs(x2! - x1!) / Math.abs(y2! - y1!)];
    });
    expect(Math.max(...slopes)).toBeLessThan(3);
  });

  it('draws one pair alone on the scale of all', () => {
    const alone = shapesOf(fanFit, { onlyPair: 4 });
    const marks = alone.flatMap((shape) =>
      shape.kind === 'text' && shape.role === 'mark' ? [shape.text] : [],
    );
    expect(marks).toEqual(['L5', 'P5']);
    expect(fitRulesLayout(fanFit, width, { onlyPair: 4 }).scale.pxPerPm).toBe(
      fitRulesLayout(fanFit, width).scale.pxPerPm,
    );
    const toMake = shapesOf(fanFit, { onlyPair: 7 });
    expect(toMake.filter(({ role }) => role === 'tie')).toEqual([]);
    expect(toMake.filter(({ role }) => role === 'toMakeLine')).toHaveLength(1);
  });

  it('draws a fit of which nothing is measured', () => {
    const none: FitRulesData = {
      ...fanFit,
      ties: [],
      toMake: [],
      internal: { ...fanFit.internal, pieces: [], lowerPm: null, upperPm: null },
      external: { ...fanFit.external, pieces: [], lowerPm: null, upperPm: null },
    };
    expect(lines(none, 'baseline')).toHaveLength(2);
    for (const shape of shapesOf(none)) {
      for (const value of Object.values(shape)) {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      }
    }
  });

  it('keeps names of 120 letters within their room, wide and narrow', () => {
    const long = 'Connecting rod of the second stage '.repeat(4).slice(0, 120);
    const data: FitRulesData = {
      ...fanFit,
      internal: { ...fanFit.internal, title: long, feature: long },
      external: { ...fanFit.external, title: long },
    };
    for (const widthPx of [320, 360, 640, 1230]) {
      const words = fitRulesLayout(data, widthPx).shapes.flatMap((shape) =>
        shape.kind === 'text' && (shape.role === 'title' || shape.role === 'subtitle')
          ? [
              {
                ...shape,
                wide: textWidth({ text: shape.text, sizePx: shape.role === 'title' ? 16 : 13 }),
              },
            ]
          : [],
      );
      for (const { x, y, wide } of words) {
        expect(x + wide).toBeLessThanOrEqual(widthPx < 600 ? widthPx : 200);
        const next = words.find((other) => other.y === y && other.x > x);
        if (next !== undefined) expect(x + wide).toBeLessThan(next.x);
      }
    }
  });

  it('can be laid out before it has a width, in either unit', () => {
    for (const unit of ['mm', 'in'] as const) {
      for (const widthPx of [0, 1, 16, 40, 120]) {
        expect(() => fitRulesLayout({ ...fanFit, unit }, widthPx)).not.toThrow();
      }
    }
  });

  it('never lets two words touch, however many pieces and however narrow', () => {
    const sizes = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 20 });
    const widths = fc.integer({ min: 640, max: 1300 });
    fc.assert(
      fc.property(sizes, sizes, widths, (inner, outer, widthPx) => {
        const piecesOf = (letter: string, from: number, list: number[]) =>
          list.map((step, index) => ({
            mark: `${letter}${index + 1}`,
            sizePm: mm(from + step / 1000),
            expandedPm: mm(0.001),
          }));
        const data: FitRulesData = {
          ...fanFit,
          internal: { ...fanFit.internal, pieces: piecesOf('L', 18, inner) },
          external: { ...fanFit.external, pieces: piecesOf('P', 17.99, outer) },
          ties: inner.slice(0, outer.length).map((_, index) => ({
            internal: `L${index + 1}`,
            external: `P${index + 1}`,
            clearancePm: mm(0.01),
            state: 'inside' as const,
          })),
          toMake: [],
        };
        const sizeOf = (role: FitRole) =>
          role === 'mark' ? 17 : role === 'clearance' || role === 'title' ? 16 : 13;
        const words = fitRulesLayout(data, widthPx).shapes.flatMap((shape) => {
          if (shape.kind !== 'text') return [];
          const sizePx = sizeOf(shape.role);
          const wide = textWidth({ text: shape.text, sizePx });
          const from = shape.anchor === 'start' ? shape.x : shape.x - wide / 2;
          return [{ from, to: from + wide, top: shape.y - 0.72 * sizePx, bottom: shape.y }];
        });
        words.forEach((a, index) => {
          for (const b of words.slice(index + 1)) {
            const clear =
              a.to <= b.from || b.to <= a.from || a.bottom <= b.top || b.bottom <= a.top;
            expect(clear).toBe(true);
          }
        });
      }),
      { numRuns: 60 },
    );
  });
});
