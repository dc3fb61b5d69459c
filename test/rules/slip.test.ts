import { describe, expect, it } from 'vitest';
import { slipOf } from '@/lib/rules/slip';
import { expectedReading } from '@/lib/rules/slips/expected-reading';
import type { SlipFacts } from '@/lib/rules/slips/slip-facts';
import { parseLength } from '@/lib/units/parse-length';
import { mm, um } from './make';

// Common practice, no source: doubted from max(5 s, 4 resolutions), named within max(3 s, 2 resolutions);
// a thimble turns 0.5 mm or 0.025 in, a line of the sleeve is 1 mm or 0.1 in.
const inch = 25_400_000_000;

/** A piston like P5 of the example: open limits from its liner, four readings about 17.999. */
const piston: SlipFacts = {
  kind: 'outside',
  nominalPm: 18 * mm,
  limits: { lowerPm: 17_996 * um, upperPm: 18_000 * um },
  othersPm: [17_999, 17_999, 17_998, 17_999].map((steps) => steps * um),
  beforeCutPm: null,
  gauge: {
    kind: 'micrometer',
    unit: 'mm',
    resolutionPm: um,
    uncertaintyPm: 400_000,
    rangeLowPm: 0,
    rangeHighPm: 25 * mm,
  },
  repeatPm: 600_000,
  setting: { decimal: '.', unit: 'mm', nominalPm: 18 * mm },
  elsewhere: [],
};
/** The same piston before anything was read of it. */
const first: SlipFacts = { ...piston, othersPm: [] };
const liner: SlipFacts = {
  ...first,
  kind: 'bore',
  limits: { lowerPm: 18 * mm, upperPm: 18_018 * um },
};

function slip(text: string, facts: SlipFacts) {
  const parsed = parseLength(text, facts.setting);
  if (parsed.kind !== 'length') throw new Error(`${text} is no length here`);
  return slipOf(
    { text, valuePm: parsed.sizePm, resolutionPm: parsed.resolutionPm ?? facts.gauge.resolutionPm },
    facts,
  );
}

describe('slipOf, beside other readings', () => {
  it('finds nothing odd about a reading among the others', () => {
    expect(slip('17.999', piston)).toBeNull();
  });

  it('lets form be form: a few steps outside the others is no slip', () => {
    expect(slip('17.995', piston)).toBeNull();
    expect(slip('18.003', piston)).toBeNull();
  });

  it('names a missed turn of a metric thimble, too many and too few', () => {
    expect(slip('18.498', piston)).toMatchObject({
      kind: 'thimble turn',
      insteadPm: 17_998 * um,
      stepPm: mm / 2,
      expected: { from: 'readings', lowPm: 17_998 * um, highPm: 17_999 * um },
    });
    expect(slip('17.499', piston)).toMatchObject({ kind: 'thimble turn', insteadPm: 17_999 * um });
  });

  it('takes a turn for one only within max(3 s, 2 resolutions) of the others', () => {
    expect(slip('18.501', piston)?.kind).toBe('thimble turn'); // 18.001: two steps above 17.999
    expect(slip('18.502', piston)?.kind).not.toBe('thimble turn');
    expect(slip('18.502', { ...piston, repeatPm: um })?.kind).toBe('thimble turn'); // 3 s is 0.003
  });

  it('names a missed turn of an inch thimble: 0.025 in', () => {
    const inches: SlipFacts = {
      ...piston,
      nominalPm: inch,
      limits: { lowerPm: null, upperPm: null },
      othersPm: [0.9995 * inch, 0.9996 * inch],
      gauge: { ...piston.gauge, unit: 'in', resolutionPm: 2_540_000, rangeHighPm: inch * 1.1 },
      setting: { decimal: '.', unit: 'in', nominalPm: inch },
    };
    expect(slip('1.0245', inches)).toMatchObject({
      kind: 'thimble turn',
      insteadPm: 0.9995 * inch,
    });
    expect(slip('1.0995', inches)).toMatchObject({ kind: 'sleeve line', stepPm: inch / 10 });
  });

  it('does not look for a thimble on a caliper', () => {
    const caliper = { ...piston, gauge: { ...piston.gauge, kind: 'caliper' as const } };
    expect(slip('18.498', caliper)?.kind).not.toBe('thimble turn');
  });

  it('names a missed line of the sleeve: a whole millimetre', () => {
    expect(slip('18.999', piston)).toMatchObject({ kind: 'sleeve line', insteadPm: 17_999 * um });
  });

  it('names a missed turn of a needle, by the step of the dial', () => {
    const clock = (unit: 'mm' | 'in', resolutionPm: number, ...others: number[]): SlipFacts => ({
      ...piston,
      kind: 'step',
      limits: { lowerPm: null, upperPm: null },
      othersPm: others,
      repeatPm: null,
      gauge: {
        ...piston.gauge,
        kind: 'dial gauge',
        unit,
        resolutionPm,
        uncertaintyPm: null,
        rangeHighPm: null,
      },
      setting: { decimal: '.', unit, nominalPm: 3 * mm },
    });
    const coarse = clock('mm', 10 * um, 2_350 * um, 2_360 * um);
    expect(slip('3.36', coarse)).toMatchObject({ kind: 'needle turn', stepPm: mm });
    const fine = clock('mm', um, 2_351 * um, 2_352 * um);
    expect(slip('2.152', fine)).toMatchObject({ kind: 'needle turn', stepPm: 200 * um });
    expect(slip('2.452', fine)).toMatchObject({ kind: 'needle turn', stepPm: 100 * um });
    const inches = clock('in', inch / 1000, 0.105 * inch);
    expect(slip('.205', inches)).toMatchObject({ kind: 'needle turn', stepPm: inch / 10 });
    const halves = clock('in', inch / 2000, 0.105 * inch);
    expect(slip('.1550', halves)).toMatchObject({ kind: 'needle turn', stepPm: inch / 20 });
    const tenths = clock('in', inch / 10_000, 0.105 * inch);
    expect(slip('.1150', tenths)).toMatchObject({ kind: 'needle turn', stepPm: inch / 100 });
    expect(slip('18.498', piston)?.kind).toBe('thimble turn');
    const caliper = { ...coarse, gauge: { ...coarse.gauge, kind: 'caliper' as const } };
    expect(slip('3.36', caliper)?.kind).toBe('sleeve line');
  });

  it('names a frame of another size: 25 mm or an inch, up to three', () => {
    const bar: SlipFacts = {
      ...piston,
      nominalPm: 43 * mm,
      limits: { lowerPm: 42_980 * um, upperPm: 43 * mm },
      othersPm: [42_990 * um],
      gauge: { ...piston.gauge, rangeLowPm: null, rangeHighPm: null },
    };
    expect(slip('17.991', bar)).toMatchObject({
      kind: 'wrong frame',
      insteadPm: 42_991 * um,
      stepPm: 25 * mm,
    });
    expect(slip('92.991', bar)).toMatchObject({ kind: 'wrong frame', stepPm: 50 * mm });
    expect(slip('17.991', { ...bar, othersPm: [] })?.kind).toBe('wrong frame'); // by its limits
    const inches: SlipFacts = {
      ...bar,
      othersPm: [1.6925 * inch],
      limits: { lowerPm: null, upperPm: null },
      gauge: { ...bar.gauge, unit: 'in', resolutionPm: 2_540_000 },
      setting: { decimal: '.', unit: 'in', nominalPm: 1.6925 * inch },
    };
    expect(slip('0.6925', inches)).toMatchObject({ kind: 'wrong frame', stepPm: inch });
    const rule = { ...bar, gauge: { ...bar.gauge, kind: 'caliper' as const } };
    expect(slip('17.991', rule)?.kind).toBe('far off');
  });

  it('names the other unit, both ways', () => {
    expect(slip('0.7086', { ...piston, repeatPm: null })).toMatchObject({ kind: 'other unit' });
    expect(slip('457.175', piston)).toMatchObject({
      kind: 'other unit',
      insteadPm: 17_999_015_748,
    });
  });

  it('names a moved point, and one left out', () => {
    expect(slip('1.7999', piston)).toMatchObject({
      kind: 'decimal point',
      insteadPm: 17_999 * um,
    });
    expect(slip('179.99', piston)?.kind).toBe('decimal point');
    expect(slip('17999', piston)).toMatchObject({ kind: 'decimal point', insteadPm: 17_999 * um });
  });

  it('names two neighbouring figures exchanged, over the point too', () => {
    const odd = { ...piston, othersPm: [18_210 * um, 18_210 * um] };
    expect(slip('18.12', { ...odd, gauge: { ...odd.gauge, resolutionPm: 10 * um } })).toMatchObject(
      {
        kind: 'swapped figures',
        insteadPm: 18_210 * um,
      },
    );
    expect(slip('19.799', piston)).toMatchObject({
      kind: 'swapped figures',
      insteadPm: 17_999 * um,
    });
    expect(slip('12.855', { ...piston, othersPm: [18_255 * um] })).toMatchObject({
      kind: 'swapped figures',
      insteadPm: 18_255 * um,
    });
  });

  it('names a radius read for a diameter', () => {
    expect(slip('9.0', { ...piston, gauge: { ...piston.gauge, resolutionPm: um } })?.kind).toBe(
      'half or double',
    );
    expect(slip('35.998', piston)).toMatchObject({
      kind: 'half or double',
      insteadPm: 17_999 * um,
    });
  });

  it('names the feature whose size it is', () => {
    const elsewhere = [
      { pieceId: 'P5', featureId: 'length', lowPm: 19_970 * um, highPm: 19_970 * um },
    ];
    expect(slip('19.97', { ...piston, elsewhere })).toMatchObject({
      kind: 'wrong feature',
      elsewhere: { featureId: 'length' },
    });
  });

  it('names one figure wrong, or one too many', () => {
    expect(slip('13.999', piston)).toMatchObject({ kind: 'one figure', insteadPm: 17_999 * um });
    expect(
      slip('177.999', { ...piston, gauge: { ...piston.gauge, rangeHighPm: null } }),
    ).toMatchObject({ kind: 'one figure', insteadPm: 17_999 * um });
  });

  it('calls far off what nothing explains, and only from fifty steps and the whole band away', () => {
    expect(slip('18.163', piston)?.kind).toBe('far off');
    expect(slip('18.042', piston)).toBeNull(); // 43 steps
    const wide = { ...piston, limits: { lowerPm: 17_800 * um, upperPm: 18_000 * um } };
    expect(slip('18.163', wide)).toBeNull(); // 164 steps, inside a band of 200
  });

  it('calls far off what the history of the gauge does not allow, once there is one', () => {
    const known = { ...piston, repeatDegrees: 4 };
    expect(slip('18.013', known)?.kind).toBe('far off'); // 14 steps above 17.999, more than 10 s
    expect(slip('18.009', known)).toBeNull(); // 10 steps
    expect(slip('18.013', { ...known, repeatDegrees: 3 })).toBeNull();
    expect(slip('18.013', { ...known, repeatPm: 2 * um })).toBeNull(); // 10 s is 0.020
    expect(slip('18.024', { ...known, repeatPm: 2 * um })?.kind).toBe('far off');
    const wide = { ...known, limits: { lowerPm: 17_800 * um, upperPm: 18_000 * um } };
    expect(slip('18.163', wide)?.kind).toBe('far off'); // inside a band of 200, and 270 s away
    expect(slip('18.013', { ...known, othersPm: [] })).toBeNull();
  });

  it('lets a coarse text be coarse, and doubts it beyond its own rounding', () => {
    expect(slip('18', piston)).toBeNull();
    expect(slip('17', piston)).toBeNull(); // 0.998 below 17.998, typed to 1
    expect(slip('16', piston)?.kind).toBe('one figure'); // 18, one figure away
    expect(slip('45', { ...piston, gauge: { ...piston.gauge, rangeHighPm: null } })?.kind).toBe(
      'far off',
    );
  });

  it('is calmer where the gauge repeats worse', () => {
    expect(slip('18.498', { ...piston, repeatPm: 120 * um })).toBeNull(); // 5 s is 0.6
  });
});

describe('slipOf, of a first reading', () => {
  it('takes a shaft above its limits for stock, and one below by a turn for a slip', () => {
    expect(slip('18.498', first)).toBeNull();
    expect(slip('17.498', first)).toMatchObject({
      kind: 'thimble turn',
      insteadPm: 17_998 * um,
      expected: { from: 'limits' },
    });
  });

  it('takes a bore below its limits for stock, and one above by a turn for a slip', () => {
    expect(slip('17.512', liner)).toBeNull();
    expect(slip('18.512', liner)).toMatchObject({ kind: 'thimble turn', insteadPm: 18_012 * um });
  });

  it('does not ask about a size that is only out', () => {
    expect(slip('17.980', first)).toBeNull();
    expect(slip('18.031', liner)).toBeNull();
  });

  it('sees the other unit, the point and the radius without other readings', () => {
    expect(slip('0.7087', first)?.kind).toBe('other unit');
    expect(slip('180.05', { ...first, gauge: { ...first.gauge, rangeHighPm: null } })?.kind).toBe(
      'decimal point',
    );
    expect(slip('9.0', first)?.kind).toBe('half or double');
  });

  it('after a cut, doubts a shaft that is larger than it was by a turn', () => {
    const cut = { ...first, beforeCutPm: 18_086 * um };
    expect(slip('18.050', cut)).toBeNull();
    expect(slip('18.499', cut)).toMatchObject({ kind: 'thimble turn', insteadPm: 17_999 * um });
  });

  it('cannot tell a turn where only the nominal is known', () => {
    const open = { ...first, limits: { lowerPm: null, upperPm: null } };
    expect(slip('17.498', open)).toBeNull();
    expect(slip('1.80', open)?.kind).toBe('decimal point');
  });

  it('far beyond stock, is looked at for swapped figures and for one that is wrong or too many', () => {
    const caliper = { ...first, gauge: { ...first.gauge, rangeHighPm: 150 * mm } };
    expect(slip('71.998', caliper)).toMatchObject({
      kind: 'swapped figures',
      insteadPm: 17_998 * um,
    });
    const bore = { ...liner, gauge: { ...liner.gauge, rangeHighPm: 150 * mm } };
    expect(slip('118.012', bore)).toMatchObject({ kind: 'one figure', insteadPm: 18_012 * um });
  });

  it('is far off where nothing explains it and no stock could be so', () => {
    const caliper = { ...first, gauge: { ...first.gauge, rangeHighPm: 150 * mm } };
    expect(slip('77.3', caliper)).toMatchObject({ kind: 'far off', insteadPm: null });
    expect(slip('5.1', caliper)?.kind).toBe('far off');
    const bore = { ...liner, gauge: { ...liner.gauge, rangeHighPm: 150 * mm } };
    expect(slip('57.3', bore)?.kind).toBe('far off');
    // Bar and a pilot hole are stock: turned from 31, bored from 8.
    expect(slip('31.13', caliper)).toBeNull();
    expect(slip('8.21', bore)).toBeNull();
  });

  it('expects nothing of roundness', () => {
    expect(slip('0.9', { ...first, kind: 'roundness' })).toBeNull();
  });
});

describe('slipOf, by the range of the gauge', () => {
  it('says where the gauge stops', () => {
    const bar = { ...first, nominalPm: 30 * mm, limits: { lowerPm: null, upperPm: null } };
    expect(slip('31.4', bar)).toMatchObject({
      kind: 'far off',
      stopsAtPm: 25 * mm,
      insteadPm: null,
    });
    const plug = { ...bar, gauge: { ...bar.gauge, rangeLowPm: 28 * mm, rangeHighPm: null } };
    expect(slip('27.9', plug)).toMatchObject({ kind: 'far off', stopsAtPm: 28 * mm });
  });

  it('prefers a slip that explains it', () => {
    expect(slip('35.998', piston)).toMatchObject({ kind: 'half or double', stopsAtPm: 25 * mm });
  });
});

describe('expectedReading', () => {
  const step = { resolutionPm: um };

  it('is the stretch of the other readings, calm for five s or four steps about it', () => {
    expect(expectedReading(step, piston)).toEqual({
      from: 'readings',
      lowPm: 17_998 * um,
      highPm: 17_999 * um,
      calmLowPm: 17_994 * um,
      calmHighPm: 18_003 * um,
      tolerancePm: 2 * um,
    });
    expect(expectedReading(step, { ...piston, repeatPm: 2 * um })).toMatchObject({
      calmHighPm: 18_009 * um,
      tolerancePm: 6 * um,
    });
  });

  it('takes half the stated uncertainty for s where the gauge has no history, and the coarser step', () => {
    const stated = { ...piston.gauge, uncertaintyPm: 4 * um };
    expect(expectedReading(step, { ...piston, repeatPm: null, gauge: stated })).toMatchObject({
      calmHighPm: 18_009 * um,
    });
    expect(expectedReading({ resolutionPm: 10 * um }, piston)?.tolerancePm).toBe(20 * um);
  });

  it('of a first reading is between the limits, calm where stock may stand', () => {
    expect(expectedReading(step, first)).toMatchObject({
      from: 'limits',
      lowPm: 17_996 * um,
      highPm: 18 * mm,
      calmLowPm: 17_992 * um,
      calmHighPm: 28_804 * um,
    });
    expect(expectedReading(step, liner)).toMatchObject({
      calmLowPm: 7_196 * um,
      calmHighPm: 18_022 * um,
    });
  });

  it('is a fiftieth of the nominal either way where the drawing leaves it open, and 0.2 mm at least', () => {
    const open = { ...first, limits: { lowerPm: null, upperPm: null } };
    expect(expectedReading(step, open)).toMatchObject({ from: 'nominal', lowPm: 17_640 * um });
    expect(expectedReading(step, { ...open, nominalPm: 2 * mm })).toMatchObject({
      lowPm: 1_800 * um,
    });
  });

  it('is nothing of roundness, run-out and straightness before another reading', () => {
    for (const kind of ['roundness', 'run-out', 'straightness'] as const) {
      expect(expectedReading(step, { ...first, kind })).toBeNull();
    }
  });
});
