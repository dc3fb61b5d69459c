import { describe, expect, it } from 'vitest';
import { dialRuleLayout } from '@/app/ui/cut/dial-rule-layout';

const label = (division: number) => (division / 100).toFixed(2);

describe('dialRuleLayout', () => {
  it('draws the picture of look.md: 33 px a division, from 1.34 to 1.36, the way in the middle', () => {
    const { ticks, standsX, turnX } = dialRuleLayout({
      width: 358,
      standsAt: 134,
      turnTo: 136,
      label,
    });
    expect(turnX - standsX).toBe(66);
    expect((turnX + standsX) / 2).toBe(179);
    expect(ticks.filter(({ label: text }) => text !== null).map(({ label: text }) => text)).toEqual(
      ['1.30', '1.35', '1.40'],
    );
    expect(ticks.map(({ kind }) => kind).join(' ')).toBe(
      'major minor minor minor minor medium minor minor minor minor major',
    );
  });

  it('keeps all of a long way in the picture, and its ticks apart', () => {
    for (const turnTo of [1, 7, 16, 43, 120, 500, 3000]) {
      const { ticks, standsX, turnX } = dialRuleLayout({ width: 326, standsAt: 0, turnTo, label });
      expect(standsX).toBeGreaterThanOrEqual(60);
      expect(turnX).toBeLessThanOrEqual(266);
      const gaps = ticks.slice(1).map(({ x }, i) => x - ticks[i]!.x);
      expect(Math.min(...gaps, Infinity)).toBeGreaterThanOrEqual(5);
      const figures = ticks.filter((tick) => tick.label !== null);
      const clear = figures.slice(1).map(({ labelX }, i) => labelX - figures[i]!.labelX);
      expect(Math.min(...clear, Infinity)).toBeGreaterThanOrEqual(40);
    }
  });

  it('keeps figures of an inch dial within the frame and clear of each other', () => {
    const inches = (division: number) => (division / 1000).toFixed(3).replace('-', '\u2212');
    for (const width of [288, 326, 358, 640]) {
      for (const turnTo of [-120, -4, 1, 4, 16, 43, 120, 500]) {
        const { ticks } = dialRuleLayout({ width, standsAt: 0, turnTo, label: inches });
        const figures = ticks.filter((tick) => tick.label !== null);
        // B612's digits are 0.65 em wide, its point narrower: 0.005 at 15 px is under 45.
        const halves = figures.map(({ label: text }) => (text!.length * 9) / 2);
        expect(figures.length).toBeGreaterThan(0);
        for (const [i, { labelX }] of figures.entries()) {
          expect(labelX - halves[i]!).toBeGreaterThanOrEqual(4);
          expect(labelX + halves[i]!).toBeLessThanOrEqual(width - 4);
          const before = figures[i - 1];
          if (before !== undefined) {
            expect(labelX - before.labelX).toBeGreaterThanOrEqual(halves[i]! + halves[i - 1]!);
          }
        }
      }
    }
  });
});
