import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Shape } from '@/app/ui/strip/shape';
import type { StripData } from '@/app/ui/strip/strip-data';
import { stripLayout } from '@/app/ui/strip/strip-layout';
import type { StripRole } from '@/app/ui/strip/strip-role';
import { textWidth } from '@/app/ui/strip/text-width';
import { inch, mm, stripVariants } from '../gallery/strips';

// What each variant shows is that of the drawing `strip-variants` and section 6 of look.md.

const width = 358;
const drawn = (data: StripData, widthPx = width) => stripLayout(data, 'large-phone', widthPx);
const rolesOf = (data: StripData) => new Set(drawn(data).shapes.map(({ role }) => role));
const variant = (name: string) => stripVariants[name]!;

type Kinds = { rect: 'rect'; line: 'line'; path: 'path'; circle: 'circle'; text: 'text' };
function all<Kind extends keyof Kinds>(data: StripData, kind: Kind, ...roles: StripRole[]) {
  return drawn(data).shapes.filter(
    (shape): shape is Extract<Shape<StripRole>, { kind: Kind }> =>
      shape.kind === kind && (roles.length === 0 || roles.includes(shape.role)),
  );
}
const textsOf = (data: StripData, ...roles: StripRole[]) =>
  all(data, 'text', ...roles).map(({ text }) => text);

/** Where a size stands on the drawn strip. */
const xOf = (data: StripData, pm: number) => {
  const { span } = drawn(data);
  return ((pm - span.fromPm) / (span.toPm - span.fromPm)) * width;
};

describe('the scale of a large strip', () => {
  it('has its ends on minor ticks, snapped outward', () => {
    // By hand, 17.99496 to 18.01004 with a tick every 0.001.
    const { span, ladder } = drawn(variant('Inside'));
    expect(span).toEqual({ fromPm: mm(17.994), toPm: mm(18.011) });
    expect(ladder).toMatchObject({ minorPm: mm(0.001), majorPm: mm(0.005), decimals: 3 });
  });

  it('is that of the tablet drawing: 18.000 to 18.018 on 17.995 to 18.023', () => {
    const { span } = stripLayout(variant('As drawn'), 'large-tablet', 732);
    expect(span).toEqual({ fromPm: mm(17.995), toPm: mm(18.023) });
  });

  it('does not move for a new reading, a new size or a wider guard', () => {
    const before = drawn({ ...variant('Inside'), readings: [], size: null }).span;
    for (const name of [
      'Inside',
      'Unsure',
      'Out',
      'Off the strip, and held',
      'Forty equal readings',
    ]) {
      expect(drawn({ ...variant(name), guardPm: mm(0.003) }).span, name).toEqual(before);
    }
  });

  it('is held by the caller while a piece is open', () => {
    const spanPm = { fromPm: mm(17.9), toPm: mm(18.1) };
    expect(drawn({ ...variant('Inside'), spanPm }).span).toEqual(spanPm);
  });

  it('puts larger to the right', () => {
    const [lower, upper] = all(variant('Inside'), 'line', 'post');
    expect(lower!.x1).toBeLessThan(upper!.x1);
    expect(lower!.x1).toBeCloseTo(xOf(variant('Inside'), mm(17.996)), 6);
    expect(upper!.x1).toBeCloseTo(xOf(variant('Inside'), mm(18)), 6);
  });

  it('says the unit once, at the right end, and no numeral touches it or another', () => {
    const [unit] = all(variant('Inside'), 'text', 'unit');
    expect(unit).toMatchObject({ text: 'mm', x: width, anchor: 'end' });
    expect(textsOf(variant('Inside'), 'numeral')).toEqual(['18.000', '18.005', '17.995']);
  });

  it('shows inches on their own scale, in ten-thousandths', () => {
    const { ladder } = drawn(variant('Inches'));
    expect(ladder).toMatchObject({ minorPm: inch(0.0001), decimals: 4 });
    expect(textsOf(variant('Inches'), 'unit')).toEqual(['in']);
    expect(textsOf(variant('Inches'), 'numeral')).toContain('0.9844');
  });

  it('writes the decimal mark of the person', () => {
    expect(textsOf(variant('No limits at all'), 'numeral')).toContain('52,00');
  });

  it('writes a minus as a minus', () => {
    expect(textsOf(variant('One limit only'), 'numeral').join()).not.toContain('-');
  });
});

describe('the lanes of a large strip', () => {
  it.each([
    ['large-phone', 21, 38, 32],
    ['large-tablet', 25, 66, 58],
  ] as const)('are label, dots, band, ticks: %s', (size, label, dots, band) => {
    const { shapes } = stripLayout(variant('Inside'), size, 732);
    const rect = shapes.find(({ role }) => role === 'band');
    expect(rect).toMatchObject({ kind: 'rect', y: label + dots, height: band });
    const post = shapes.find(({ role }) => role === 'post');
    const baseline = label + dots + band;
    expect(post).toMatchObject({ y1: label + dots - 6, y2: baseline + 14 });
    for (const [role, length] of [
      ['tickMinor', 6],
      ['tickMajor', 14],
    ] as const) {
      const tick = shapes.find((shape) => shape.role === role);
      expect(tick).toMatchObject({ y1: baseline, y2: baseline + length });
    }
  });
});

describe('each variant of a large strip', () => {
  it('inside: band, two posts, two guards of twice g, a mark with its bar, dots stacked, the last blue', () => {
    const data = variant('Inside');
    const band = all(data, 'rect', 'band')[0]!;
    expect(band.x).toBeCloseTo(xOf(data, mm(17.996)), 6);
    expect(band.x + band.width).toBeCloseTo(xOf(data, mm(18)), 6);
    const guards = all(data, 'rect', 'guard');
    expect(guards).toHaveLength(2);
    expect(guards[0]!.x).toBeCloseTo(xOf(data, mm(17.996) - 800_000), 6);
    expect(guards[0]!.width).toBeCloseTo((1_600_000 * width) / mm(0.017), 6);
    const bar = all(data, 'rect', 'bar')[0]!;
    expect(bar).toMatchObject({ height: 6, y: 59 + 16 - 3 });
    expect(bar.x).toBeCloseTo(xOf(data, 17_997_750_000), 6);
    expect(bar.x + bar.width).toBeCloseTo(xOf(data, 17_999_750_000), 6);
    const mark = all(data, 'rect', 'mark')[0]!;
    expect(mark).toMatchObject({ width: 3.5, y: 59 - 3, height: 35 });
    expect(mark.x + 1.75).toBeCloseTo(xOf(data, 17_998_750_000), 6);
    expect(all(data, 'circle', 'dot').map(({ cy, r }) => [cy, r])).toEqual([
      [52, 3.5],
      [52, 3.5],
      [43, 3.5],
    ]);
    expect(all(data, 'circle', 'dotLast').map(({ cy, r }) => [cy, r])).toEqual([[34, 4.5]]);
  });

  it('inside: the partner as wide as its bar, its label over it, the limits over the band', () => {
    const data = variant('Inside');
    const partner = all(data, 'rect', 'partner')[0]!;
    expect(partner.x).toBeCloseTo(xOf(data, mm(18.007)), 6);
    expect(partner.x + partner.width).toBeCloseTo(xOf(data, mm(18.009)), 6);
    expect(textsOf(data, 'label')).toEqual(['17.996 to 18.000', 'L5 bore 18.008']);
  });

  it('inside: a notch 16 wide and 13 high with the baseline open beneath it', () => {
    const data = variant('Inside');
    const x = xOf(data, mm(17.998));
    const { d } = all(data, 'path', 'notch')[0]!;
    const [ax, ay, bx, by, cx, cy] = d.match(/[\d.]+/g)!.map(Number);
    expect([ay, by, cy]).toEqual([91, 78, 91]);
    [ax! - (x - 8), bx! - x, cx! - (x + 8)].forEach((off) => expect(off).toBeCloseTo(0, 6));
    const [left, right] = all(data, 'line', 'baseline');
    expect(left!.x2).toBeCloseTo(x - 8, 6);
    expect(right!.x1).toBeCloseTo(x + 8, 6);
  });

  it('unsure: the bar hollow and 10 high, the mark warm', () => {
    expect(all(variant('Unsure'), 'rect', 'barUnsure')[0]).toMatchObject({ height: 10 });
    expect([...rolesOf(variant('Unsure'))]).toContain('markUnsure');
    expect([...rolesOf(variant('Unsure'))]).not.toContain('bar');
  });

  it('out: solid and warm, where it is', () => {
    const data = variant('Out');
    const mark = all(data, 'rect', 'markOut')[0]!;
    expect(mark.x + 1.75).toBeCloseTo(xOf(data, 18_002_300_000), 6);
    expect([...rolesOf(data)]).toContain('barOut');
  });

  it('too few readings: dots and no mark', () => {
    const roles = rolesOf(variant('Too few readings'));
    expect([...roles]).toContain('dotLast');
    expect([...roles].filter((role) => /mark|bar$/i.test(role))).toEqual([]);
  });

  it('a small bar is never under 3 px either side', () => {
    const data: StripData = {
      ...variant('Inside'),
      size: { valuePm: mm(17.998), expandedPm: 1, state: 'inside' },
    };
    expect(all(data, 'rect', 'bar')[0]!.width).toBeCloseTo(6, 6);
  });

  it('off the strip: a warm plate at the end, the baseline broken, the distance in the place of numerals', () => {
    const data = variant('Off the strip, and held');
    expect(all(data, 'path', 'plate')[0]!.d).toBe('M324 66H348L358 75L348 84H324Z');
    expect(all(data, 'path', 'break')[0]!.d).toMatch(/^M303.5 91L/);
    expect(textsOf(data, 'plateWords')).toEqual(['0.498 mm over']);
    expect(textsOf(data, 'unit')).toEqual([]);
    expect(textsOf(data, 'numeral')).toEqual(['18.000', '17.995']);
    const pastBreak = all(data, 'line', 'tickMinor', 'tickMedium', 'tickMajor').filter(
      ({ x1 }) => x1 > width - 46 + 8.5,
    );
    expect(pastBreak).toEqual([]);
    expect(all(data, 'circle', 'dotHeld')).toEqual([]);
  });

  it('off the strip while cutting: a held reading is warm all the same, counted from the limit', () => {
    const data: StripData = {
      ...variant('Stock still to cut'),
      readings: [{ valuePm: mm(18.586), state: 'held', last: true }],
    };
    expect([...rolesOf(data)]).toContain('plate');
    expect(textsOf(data, 'plateWords')).toEqual(['0.586 mm over']);
  });

  it('a reading exactly at the end of the strip is on it', () => {
    const { span } = drawn(variant('Inside'));
    for (const valuePm of [span.fromPm, span.toPm]) {
      const readings = [{ valuePm, state: 'counted' as const, last: true }];
      const data: StripData = { ...variant('Inside'), readings };
      expect([...rolesOf(data)]).not.toContain('plate');
      expect([...rolesOf(data)]).toContain('dotLast');
    }
  });

  it('off both ends: a plate at each, each with its own words, and no tick past either break', () => {
    const data = variant('Off both ends');
    for (const { x1 } of all(data, 'line', 'tickMinor', 'tickMedium', 'tickMajor')) {
      expect(x1).toBeGreaterThanOrEqual(46 + 8.5);
      expect(x1).toBeLessThanOrEqual(width - 46 - 8.5);
    }
    expect(all(data, 'path', 'plate')).toHaveLength(2);
    expect(textsOf(data, 'plateWords')).toEqual(['0.096 under', '0.200 mm over']);
  });

  it('a struck reading off the strip raises no plate', () => {
    const data: StripData = {
      ...variant('Inside'),
      readings: [{ valuePm: mm(18.498), state: 'struck', last: true }],
    };
    expect([...rolesOf(data)]).not.toContain('plate');
  });

  it('stock still to cut: the same plate in blue, counted from the aim', () => {
    const data = variant('Stock still to cut');
    expect([...rolesOf(data)]).toContain('plateLive');
    expect([...rolesOf(data)]).not.toContain('plate');
    expect(textsOf(data, 'plateWordsLive')).toEqual(['0.088 mm to go']);
  });

  it('struck out and doubtful: a ring with a line, and a warm ring', () => {
    const data = variant('Struck out and doubtful');
    expect(all(data, 'circle', 'dotHeld')[0]!.cx).toBeCloseTo(xOf(data, 18_001_500_000), 6);
    const struck = all(data, 'circle', 'dotStruck')[0]!;
    const line = all(data, 'line', 'dotStruckLine')[0]!;
    expect([line.y1, line.y2]).toEqual([struck.cy, struck.cy]);
    expect([line.x1 < struck.cx - struck.r, line.x2 > struck.cx + struck.r]).toEqual([true, true]);
  });

  it('before the cut: a blue notch, the expected size outlined with a dashed upright, the words over them', () => {
    const data = variant('Before the cut');
    expect([...rolesOf(data)]).toContain('notchLive');
    expect(all(data, 'rect', 'expected')[0]).toMatchObject({ height: 8 });
    expect([...rolesOf(data)]).toContain('expectedMark');
    expect(textsOf(data, 'labelLive')).toEqual(['after this cut']);
    expect(textsOf(data, 'label')).toEqual(['turn to 18.006', 'now']);
    expect(all(data, 'line', 'stopLine')[0]!.x1).toBeCloseTo(xOf(data, mm(18.006)), 6);
  });

  it('as drawn: says so', () => {
    expect(textsOf(variant('As drawn'), 'label')).toEqual(['as drawn 18.000 to 18.018']);
  });

  it('no limits at all: no band, no post, no guard, no label; the readings on a scale', () => {
    const roles = [...rolesOf({ ...variant('No limits at all'), guardPm: mm(0.01) })];
    for (const role of ['band', 'post', 'guard', 'label'] as const)
      expect(roles).not.toContain(role);
    expect(roles).toContain('dotLast');
    expect(roles).toContain('numeral');
  });

  it('one limit only: one post, and the band runs to the open end', () => {
    const data = variant('One limit only');
    expect(all(data, 'line', 'post')).toHaveLength(1);
    const band = all(data, 'rect', 'band')[0]!;
    expect(band.x).toBe(0);
    expect(band.x + band.width).toBeCloseTo(xOf(data, mm(0.02)), 6);
    expect(textsOf(data, 'label')).toEqual(['no larger than 0.020']);
  });

  it('forty equal readings: five dots and how many more', () => {
    const data = variant('Forty equal readings');
    expect(all(data, 'circle', 'dot', 'dotLast')).toHaveLength(5);
    expect(textsOf(data, 'more')).toEqual(['+35']);
  });

  it('a full stack of five keeps the words off its top', () => {
    const five = Array.from({ length: 5 }, () => ({
      valuePm: mm(17.998),
      state: 'counted' as const,
    }));
    const [label] = all({ ...variant('Inside'), readings: five }, 'text', 'label');
    const x = xOf(variant('Inside'), mm(17.998));
    const half = textWidth({ text: label!.text, sizePx: 13 }) / 2;
    expect(Math.abs(label!.x - x) - half).toBeGreaterThanOrEqual(4.5);
  });

  it('by zones: two thin lines at the quarter points, within the band', () => {
    const zones = { ...variant('Inside'), quarters: true };
    const [lower, upper] = all(zones, 'line', 'post').map(({ x1 }) => x1);
    const [low, high] = all(zones, 'line', 'quarter').map(({ x1 }) => x1);
    expect(low).toBeCloseTo(lower! + (upper! - lower!) / 4, 6);
    expect(high).toBeCloseTo(upper! - (upper! - lower!) / 4, 6);
    expect(all({ ...zones, quarters: false }, 'line', 'quarter')).toEqual([]);
    expect(all({ ...zones, upperPm: null }, 'line', 'quarter')).toEqual([]);
  });

  it('guards that meet are one hatch, so that no line is drawn twice', () => {
    expect(all({ ...variant('Inside'), guardPm: mm(0.0021) }, 'rect', 'guard')).toHaveLength(1);
  });

  it.each([
    ['a band of 2 mm', 2, 0.01],
    ['a band of 20 pm', 2e-8, 0.001],
  ])('draws %s', (_, bandMm, resolutionMm) => {
    const data: StripData = {
      unit: 'mm',
      decimal: '.',
      resolutionPm: mm(resolutionMm),
      lowerPm: mm(20),
      upperPm: mm(20) + Math.round(bandMm * 1e9),
    };
    const { ladder, shapes } = drawn(data);
    expect(ladder!.minorPm).toBeGreaterThanOrEqual(mm(resolutionMm));
    for (const shape of shapes) {
      for (const value of Object.values(shape)) {
        if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
      }
    }
  });
});

describe('any large strip', () => {
  const lengthPm = fc.integer({ min: mm(19), max: mm(21) });
  const data = fc.record({
    unit: fc.constantFrom('mm' as const, 'in' as const),
    decimal: fc.constantFrom('.' as const, ',' as const),
    resolutionPm: fc.constantFrom(mm(0.001), mm(0.01), inch(0.0001), null),
    lowerPm: fc.option(lengthPm),
    upperPm: fc.option(lengthPm),
    guardPm: fc.integer({ min: 0, max: mm(0.1) }),
    aimPm: fc.option(lengthPm),
    drawn: fc.boolean(),
    live: fc.boolean(),
    partner: fc.option(
      fc.record({
        mark: fc.constantFrom('L5', 'L12'),
        name: fc.constantFrom('bore', 'bush seat'),
        sizePm: fc.option(lengthPm),
        expandedPm: fc.option(fc.integer({ min: 0, max: mm(0.05) })),
        lowerPm: fc.option(lengthPm),
        upperPm: fc.option(lengthPm),
      }),
    ),
    readings: fc.array(
      fc.record({
        valuePm: lengthPm,
        state: fc.constantFrom('counted' as const, 'held' as const, 'struck' as const),
        last: fc.boolean(),
      }),
      { maxLength: 12 },
    ),
    size: fc.option(
      fc.record({
        valuePm: lengthPm,
        expandedPm: fc.integer({ min: 0, max: mm(0.1) }),
        state: fc.constantFrom('inside' as const, 'unsure' as const, 'out' as const, null),
        label: fc.constant('now'),
      }),
    ),
    expected: fc.option(
      fc.record({ valuePm: lengthPm, expandedPm: fc.integer({ min: 0, max: mm(0.1) }) }),
    ),
    stopAt: fc.option(fc.record({ valuePm: lengthPm })),
  });
  const widths = fc.integer({ min: 296, max: 1200 });

  it('has no two words that overlap, and none that leaves the strip', () => {
    fc.assert(
      fc.property(data, widths, (strip, widthPx) => {
        const { shapes } = stripLayout(strip, 'large-phone', widthPx);
        const words = shapes.flatMap((shape) => {
          if (shape.kind !== 'text') return [];
          const wide = textWidth({ text: shape.text, sizePx: 13 });
          const share = { start: 0, middle: 0.5, end: 1 }[shape.anchor];
          return [{ y: shape.y, from: shape.x - share * wide, to: shape.x + (1 - share) * wide }];
        });
        words.forEach((word, index) => {
          expect(word.from).toBeGreaterThanOrEqual(-1e-6);
          expect(word.to).toBeLessThanOrEqual(widthPx + 1e-6);
          for (const other of words.slice(index + 1)) {
            const apart = other.from >= word.to || word.from >= other.to;
            expect(apart || other.y !== word.y).toBe(true);
          }
        });
      }),
      { numRuns: 150 },
    );
  });

  it('has ticks 8 px apart or more and never finer than the gauge', () => {
    fc.assert(
      fc.property(data, widths, (strip, widthPx) => {
        const { shapes, ladder } = stripLayout(strip, 'large-phone', widthPx);
        expect(ladder!.minorPm).toBeGreaterThanOrEqual(strip.resolutionPm ?? 0);
        const ticks = shapes
          .flatMap((shape) =>
            shape.kind === 'line' && shape.role.startsWith('tick') ? [shape.x1] : [],
          )
          .sort((a, b) => a - b);
        ticks.slice(1).forEach((x, index) => {
          // Snapping both ends out may bring ticks a fortieth closer.
          expect(x - ticks[index]!).toBeGreaterThan(7.8);
        });
      }),
      { numRuns: 60 },
    );
  });

  it('does not move its scale for readings or a size, whatever they are', () => {
    fc.assert(
      fc.property(data, widths, (strip, widthPx) => {
        const bare = { ...strip, readings: [], size: null, guardPm: 0 };
        expect(stripLayout(strip, 'large-phone', widthPx).span).toEqual(
          stripLayout(bare, 'large-phone', widthPx).span,
        );
      }),
      { numRuns: 60 },
    );
  });

  it('draws only finite numbers and no block of no width', () => {
    fc.assert(
      fc.property(data, widths, (strip, widthPx) => {
        for (const shape of stripLayout(strip, 'large-tablet', widthPx).shapes) {
          for (const value of Object.values(shape)) {
            if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
            if (typeof value === 'string') expect(value).not.toMatch(/NaN|Infinity/);
          }
          if (shape.kind === 'rect') {
            expect(shape.width).toBeGreaterThan(0);
            expect(shape.x).toBeGreaterThanOrEqual(-4);
            expect(shape.x + shape.width).toBeLessThanOrEqual(widthPx + 4);
          }
        }
      }),
      { numRuns: 60 },
    );
  });
});
