import { describe, expect, it } from 'vitest';
import { isAtPace, noBurst, withCharacter, type EntryBurst } from '@/lib/rules/entry-burst';
import { endsAfterMs, endsWithComma, halfOfDouble, isSecondEnd } from '@/lib/rules/entry-end';
import { gaugeMeaning } from '@/lib/rules/gauge-meaning';
import { gaugeMark, gaugeMessage, isWholeMessage } from '@/lib/rules/gauge-message';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import type { GaugeSends } from '@/lib/schema/gauge';
import { mm, um } from './make';

// What keyboard-type gauges send, and how it ends: the table of design/capture.md, section 1.1 (an
// open-hardware adapter's README). The paces of 5, 20 and 100 ms a key are those the Bench is tried at.

const taught = (over: Partial<GaugeSends>): GaugeSends => ({
  ...untaughtGauge,
  sendsMark: '.',
  sendsPlaces: 3,
  sendsUnit: 'mm',
  ...over,
});
const typed = (text: string, gapMs: number): EntryBurst =>
  [...text].reduce((burst, _, n) => withCharacter(burst, 1000 + n * gapMs), noBurst);

describe('the end of a message', () => {
  it('is a comma only for a gauge taught so, and only behind all that it sends', () => {
    const comma = taught({ sendsEnd: 'comma' });
    expect(endsWithComma('18.003', comma)).toBe(true);
    expect(endsWithComma('-0018.003', comma)).toBe(true);
    // A person's decimal comma, half way through a number typed by hand.
    expect(endsWithComma('18', comma)).toBe(false);
    expect(endsWithComma('18.0', comma)).toBe(false);
    expect(endsWithComma('18.003', taught({ sendsEnd: 'enter' }))).toBe(false);
    expect(endsWithComma('18.003', untaughtGauge)).toBe(false);
    expect(endsWithComma('18.003', null)).toBe(false);
  });

  it('is a pause after a whole number that came at the pace of a gauge', () => {
    const nothing = taught({ sendsEnd: 'nothing' });
    for (const gapMs of [5, 20, 100]) {
      expect(endsAfterMs('18.003', nothing, typed('18.003', gapMs))).toBe(150);
    }
    expect(endsAfterMs('18.00', nothing, typed('18.00', 20))).toBeNull();
    expect(endsAfterMs('18.003', taught({ sendsEnd: 'nothing', sendsPauseMs: 300 }), typed('18.003', 200))).toBe(300); // prettier-ignore
  });

  it('is never a pause while a person types, who ends with Enter', () => {
    const nothing = taught({ sendsEnd: 'nothing' });
    expect(endsAfterMs('18.003', nothing, typed('18.003', 150))).toBeNull();
    expect(endsAfterMs('18.003', nothing, typed('18.003', 400))).toBeNull();
    const oneStop = [0, 20, 40, 400, 420, 440].reduce((b, at) => withCharacter(b, at), noBurst);
    expect(endsAfterMs('18.003', nothing, oneStop)).toBeNull();
    expect(endsAfterMs('18.003', nothing, noBurst)).toBeNull();
  });

  it('is never a pause for a gauge that has another end, or was never taught', () => {
    for (const sendsEnd of ['enter', 'tab', 'comma', null] as const) {
      expect(endsAfterMs('18.003', taught({ sendsEnd }), typed('18.003', 5))).toBeNull();
    }
    expect(endsAfterMs('18.003', null, typed('18.003', 5))).toBeNull();
  });

  it('is a space and then nothing: what a hand types behind a space is a unit or a fraction', () => {
    const space = taught({ sendsEnd: 'space' });
    expect(endsAfterMs('18.003 ', space, typed('18.003 ', 20))).toBe(150);
    expect(endsAfterMs('18.003', space, typed('18.003', 20))).toBeNull();
    expect(endsAfterMs('1 ', space, typed('1 ', 20))).toBeNull();
    expect(endsAfterMs('18.003 ', space, typed('18.003 ', 300))).toBeNull();
    const says = taught({ sendsEnd: 'space', sendsUnit: 'says' });
    expect(endsAfterMs('18.003 ', says, typed('18.003 ', 20))).toBeNull();
    expect(endsAfterMs('18.003 mm ', says, typed('18.003 mm ', 20))).toBe(150);
  });

  it('comes twice where CR and LF are two keys, and then counts once', () => {
    expect(isSecondEnd(1000, 1000)).toBe(true);
    expect(isSecondEnd(1000, 1100)).toBe(true);
    expect(isSecondEnd(1000, 1200)).toBe(false);
    expect(isSecondEnd(1000, 999)).toBe(false);
    expect(isSecondEnd(null, 1000)).toBe(false);
  });

  it('is missing between two equal messages when the button of a gauge without one bounces', () => {
    const nothing = taught({ sendsEnd: 'nothing' });
    expect(halfOfDouble('18.00318.003', nothing)).toBe('18.003');
    expect(halfOfDouble('18.00318.004', nothing)).toBeNull();
    expect(halfOfDouble('18.003', nothing)).toBeNull();
    // Without a mark it may be one number.
    expect(halfOfDouble('1818', { ...nothing, sendsPlaces: 0 })).toBeNull();
    expect(halfOfDouble('18.00318.003', taught({ sendsEnd: 'enter' }))).toBeNull();
  });

  it('comes for two messages without a gap, so that they are asked about and not left standing', () => {
    const nothing = taught({ sendsEnd: 'nothing' });
    for (const both of ['18.00318.003', '18.00318.005']) {
      expect(endsAfterMs(both, nothing, typed(both, 20))).toBe(150);
    }
    expect(endsAfterMs('18.00318.00', nothing, typed('18.00318.00', 20))).toBeNull();
    expect(endsAfterMs('18.00318.', nothing, typed('18.00318.', 20))).toBeNull();
  });

  it('needs three characters, each at the pace', () => {
    expect(isAtPace(typed('18.', 100), 101)).toBe(true);
    expect(isAtPace(typed('18.', 100), 100)).toBe(false);
    expect(isAtPace(typed('18', 5), 100)).toBe(false);
  });
});

describe('isWholeMessage', () => {
  it.each([
    ['18.003', true],
    ['+18.003', true],
    ['-0.012', true],
    ['.983', true],
    ['0018.003', true],
    ['18.003 mm', true],
    // The half digit an inch caliper adds behind its last place.
    ['0.70895', true],
    ['18.00', false],
    ['18,003', false],
    ['18', false],
    ['', false],
    ['-', false],
    ['.', false],
    ['1 1/4', false],
    ['18..003', false],
    ['18.003 thou', false],
  ])('%j: %s', (text, is) => {
    expect(isWholeMessage(text, taught({}))).toBe(is);
  });

  it('takes one decimal for enough where nobody has seen how many it writes', () => {
    expect(isWholeMessage('18.0', taught({ sendsPlaces: null }))).toBe(true);
    expect(isWholeMessage('18', taught({ sendsPlaces: null }))).toBe(false);
    expect(isWholeMessage('18', taught({ sendsPlaces: 0 }))).toBe(true);
  });
});

describe('what a message means', () => {
  const of = (text: string, gauge: Partial<GaugeSends>, over = {}) =>
    gaugeMeaning(text, {
      gauge: { ...untaughtGauge, ...gauge },
      decimal: '.',
      unit: 'mm',
      nominalPm: 18 * mm,
      kind: 'outside',
      ...over,
    });
  const length = (sizePm: number, more: object = {}) => ({
    kind: 'length',
    meaning: { sizePm, ...more },
  });

  it('is as a person would type it, where the gauge was never taught', () => {
    expect(of('18.003', {})).toMatchObject(length(18_003 * um));
    expect(of('18,003', {})).toMatchObject({ kind: 'question', code: 'mark-thousands' });
    expect(of('+18.003', {})).toMatchObject({ kind: 'question', code: 'sign-large' });
    expect(gaugeMeaning('18.003', { gauge: null, decimal: '.', unit: 'mm', kind: 'bore' })).toMatchObject(length(18_003 * um)); // prettier-ignore
  });

  it('has the decimal mark of the gauge, and of the person where a person typed', () => {
    expect(of('18,003', { sendsMark: ',' })).toMatchObject(length(18_003 * um));
    expect(of('18.003', { sendsMark: ',' })).toMatchObject(length(18_003 * um));
    expect(of('18.003', { sendsMark: '.' }, { decimal: ',' })).toMatchObject(length(18_003 * um));
    expect(of('18,003', { sendsMark: '.' }, { decimal: ',' })).toMatchObject(length(18_003 * um));
    expect(of('18,003', { sendsMark: '.' })).toMatchObject({ kind: 'question' });
    expect(gaugeMark('18,003', { sendsMark: ',' }, '.')).toBe(',');
    expect(gaugeMark('18.003', { sendsMark: ',' }, '.')).toBe('.');
    expect(gaugeMark('18.003', null, ',')).toBe(',');
  });

  it('is checked by size where the unit follows the gauge\u2019s own button', () => {
    const button = { sendsUnit: 'button' } as const;
    // 0.7088 in is 18.003 52 mm, by 1 in = 25.4 mm.
    expect(of('0.7088', button)).toMatchObject(length(18_003_520_000, { unit: 'in' }));
    expect(of('18.003', button, { unit: 'in' })).toMatchObject(length(18_003 * um, { unit: 'mm' }));
    // A half digit: 0.70895 in, read to 0.000 01 in.
    expect(of('0.70895', button)).toMatchObject(
      length(18_007_330_000, { unit: 'in', resolutionPm: 254_000 }),
    );
  });

  it('takes a third of the nominal, and three times it, for near, and nothing beyond', () => {
    // The nominal is 18 mm; 6 in is 152.4 mm and 54 in is 1371.6 mm.
    expect(of('6', button)).toMatchObject(length(6 * mm, { unit: 'mm' }));
    expect(of('54', button)).toMatchObject(length(54 * mm, { unit: 'mm' }));
    for (const beyond of ['5.999', '54.001']) {
      expect(of(beyond, button)).toMatchObject({ kind: 'question', code: 'gauge-unit' });
    }
  });

  it('asks where neither unit comes near the nominal', () => {
    expect(of('4.5', button)).toMatchObject({
      kind: 'question',
      code: 'gauge-unit',
      meanings: [{ sizePm: 4.5 * mm }, { sizePm: 114.3 * mm }],
    });
  });
  const button = { sendsUnit: 'button' } as const;

  it('is in its own unit where it says so, and never checked against the nominal then', () => {
    expect(of('0.7088 in', { sendsUnit: 'says' })).toMatchObject(length(18_003_520_000));
    expect(of('4.5 mm', { sendsUnit: 'says' })).toMatchObject(length(4.5 * mm));
    expect(of('4.5in', button)).toMatchObject(length(114.3 * mm));
    expect(of('0.7088', { sendsUnit: 'says' })).toMatchObject(length(18_003_520_000));
  });

  it('is not checked by size where there is no size to check by', () => {
    const form = { kind: 'roundness', nominalPm: 0 };
    expect(of('0.004', button, form)).toMatchObject(length(4 * um, { unit: 'mm' }));
    expect(of('+.016', button)).toMatchObject(length(18_016 * um, { isRelative: true }));
    const { nominalPm: _, ...open } = { decimal: '.', unit: 'mm', kind: 'width', nominalPm: 0 } as const; // prettier-ignore
    expect(gaugeMeaning('0.7', { gauge: { ...untaughtGauge, ...button }, ...open })).toMatchObject(
      length(700 * um),
    );
  });

  it('has a plus that is no departure, where the gauge writes one before every size', () => {
    expect(of('+18.003', { sendsPlus: true })).toMatchObject(
      length(18_003 * um, { isRelative: false }),
    );
    expect(of('+0.003', { sendsPlus: true })).toMatchObject(
      length(18_003 * um, { isRelative: true }),
    );
  });

  it('is without what the gauge writes in front, and a sign alone is none', () => {
    expect(gaugeMessage('A+18.003', { sendsPrefix: 'A' })).toBe('+18.003');
    expect(gaugeMessage(' N 18.003', { sendsPrefix: 'N' })).toBe(' 18.003');
    expect(gaugeMessage('18.003', { sendsPrefix: 'A' })).toBe('18.003');
    expect(of('A18.003', { sendsPrefix: 'A' })).toMatchObject(length(18_003 * um));
    expect(of('-', { sendsPlus: true })).toEqual({ kind: 'begun', aloneSign: true });
    expect(of('0018.003', {})).toMatchObject(length(18_003 * um));
  });
});
