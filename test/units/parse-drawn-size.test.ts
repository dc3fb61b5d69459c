import { describe, expect, it } from 'vitest';
import { parseDrawnSize } from '@/lib/units/parse-drawn-size';

const metric = { decimal: '.', unit: 'mm' } as const;
const inches = { decimal: '.', unit: 'in' } as const;

const um = (value: number | null) => (value === null ? null : value * 1_000_000);

// The forms are those a drawing uses (ISO 129-1 and ASME Y14.5, from memory); the sizes are made up
// and their picometres worked out by hand.
describe('parseDrawnSize', () => {
  it.each([
    ['18.000 +0.018 0', 18000, 18, 0],
    ['18.000 +0.018/0', 18000, 18, 0],
    ['18.000 0/+0.018', 18000, 18, 0],
    ['24.000 -0.020 -0.041', 24000, -20, -41],
    ['24.000 \u22120.020 / \u22120.041', 24000, -20, -41],
    ['12.000 0 / -0.027', 12000, 0, -27],
    ['52 \u00b10.05', 52000, 50, -50],
    ['52 +/-0.05', 52000, 50, -50],
    ['18 (+0.018/0)', 18000, 18, 0],
    ['18 +18/0 \u00b5m', 18000, 18, 0],
    ['22 mm \u00b1 50 um', 22000, 50, -50],
    ['20.0', 20000, null, null],
    ['22 \u00b10', 22000, 0, 0],
  ])('reads %s', (text, nominal, upper, lower) => {
    const parsed = parseDrawnSize(text, metric);
    expect(parsed).toMatchObject({
      kind: 'size',
      nominalPm: um(nominal),
      unit: 'mm',
      asTyped: text,
    });
    expect(parsed).toMatchObject({ upperPm: um(upper), lowerPm: um(lower), isoClass: null });
  });

  it('reads inches by the unit at the end, by the job, and as fractions', () => {
    expect(parseDrawnSize('\u00d8 0.500 +0.0005 -0.0000 in', metric)).toMatchObject({
      nominalPm: 12_700_000_000,
      upperPm: 12_700_000,
      lowerPm: 0,
      unit: 'in',
      isDiameter: true,
    });
    expect(parseDrawnSize('.7087 +.0007/-0', inches)).toMatchObject({
      nominalPm: 18_000_980_000,
      upperPm: 17_780_000,
      lowerPm: 0,
      unit: 'in',
      resolutionPm: 2_540_000,
    });
    expect(parseDrawnSize('1/2 in', metric)).toMatchObject({
      nominalPm: 12_700_000_000,
      unit: 'in',
    });
    expect(parseDrawnSize('1-1/4 \u00b11/64', inches)).toMatchObject({
      nominalPm: 31_750_000_000,
      upperPm: 396_875_000,
    });
  });

  it('keeps the class without looking its deviations up', () => {
    expect(parseDrawnSize('\u00d818 H7', metric)).toMatchObject({
      nominalPm: 18e9,
      isoClass: 'H7',
      upperPm: null,
      lowerPm: null,
      isDiameter: true,
    });
    expect(parseDrawnSize('18js6', metric)).toMatchObject({ nominalPm: 18e9, isoClass: 'js6' });
    const both = parseDrawnSize('18 H7 (+0.018 0)', metric);
    expect(both).toMatchObject({ isoClass: 'H7', upperPm: 18_000_000, lowerPm: 0 });
  });

  it('reads two limits and takes the rounder one as the nominal', () => {
    const shaft = { nominalPm: 18e9, upperPm: 0, lowerPm: -4_000_000, isLimits: true };
    expect(parseDrawnSize('17.996 to 18.000', metric)).toMatchObject({ kind: 'size', ...shaft });
    expect(parseDrawnSize('18.000/17.996', metric)).toMatchObject({ kind: 'size', ...shaft });
    const hole = { nominalPm: 18e9, upperPm: 18_000_000, lowerPm: 0, isLimits: true };
    expect(parseDrawnSize('18.018/18.000', metric)).toMatchObject({ kind: 'size', ...hole });
    const alike = parseDrawnSize('18.018 to 18.024', metric);
    expect(alike).toMatchObject({ nominalPm: 18_018_000_000, upperPm: 6_000_000, lowerPm: 0 });
  });

  it('keeps the resolution of the nominal as typed', () => {
    expect(parseDrawnSize('20.0', metric)).toMatchObject({ resolutionPm: 100_000_000 });
    expect(parseDrawnSize('20', metric)).toMatchObject({ resolutionPm: 1_000_000_000 });
    expect(parseDrawnSize('5/32', inches)).toMatchObject({ resolutionPm: null });
  });

  it('asks what one deviation alone leaves open', () => {
    expect(parseDrawnSize('18 -0.018', metric)).toMatchObject({
      kind: 'question',
      code: 'one-deviation',
      meanings: [
        { upperPm: 0, lowerPm: -18_000_000 },
        { upperPm: null, lowerPm: -18_000_000 },
      ],
    });
  });

  it('asks about a bare fraction in a metric job, with the unit of each meaning', () => {
    expect(parseDrawnSize('5/32', metric)).toMatchObject({
      code: 'fraction-unit',
      meanings: [
        { nominalPm: 3_968_750_000, unit: 'in' },
        { nominalPm: 156_250_000, unit: 'mm' },
      ],
    });
  });

  it('asks about the other decimal mark and about tenths in a deviation', () => {
    expect(parseDrawnSize('18,000 +0,018 0', metric)).toMatchObject({
      code: 'mark-thousands',
      meanings: [{ nominalPm: 18e9 }, { nominalPm: 18e12 }],
    });
    expect(parseDrawnSize('18 \u00b12 tenths', metric)).toMatchObject({
      code: 'unit-tenths',
      meanings: [{ upperPm: 5_080_000 }, { upperPm: 200_000_000 }],
    });
    const own = parseDrawnSize('18,000 +0,018 0', { decimal: ',', unit: 'mm' });
    expect(own).toMatchObject({ kind: 'size', nominalPm: 18e9, upperPm: 18_000_000 });
  });

  it('asks whether a dash joins two limits', () => {
    const parsed = parseDrawnSize('17.996-18.000', metric);
    expect(parsed).toMatchObject({
      code: 'limits-or-deviation',
      meanings: [{ lowerPm: -4_000_000 }],
    });
  });

  it('takes a single minus as a deviation up to half the size', () => {
    expect(parseDrawnSize('10 -5', metric)).toMatchObject({ code: 'one-deviation' });
    expect(parseDrawnSize('10 -4.9', metric)).toMatchObject({ code: 'one-deviation' });
    expect(parseDrawnSize('10 -5.1', metric)).toMatchObject({ code: 'limits-or-deviation' });
  });

  it.each([
    ['18 H7/g6', 'fit', 3],
    ['18 H7 g6', 'fit', 3],
    ['18 H22', 'iso-class', 3],
    ['R5', 'unknown-unit', 0],
    ['M6', 'unknown-unit', 0],
    ['18 0.018 0', 'unsigned-deviation', 3],
    ['+0.018 18', 'sign-first', 1],
    ['18 +0.018 0 -0.1', 'too-many-numbers', 13],
    ['18 \u00b10.1 0', 'too-many-numbers', 8],
    ['18 + -0.1 0', 'too-many-numbers', 10],
    ['18/0', 'limits-apart', 3],
    ['0', 'not-above-zero', 0],
    ['', 'no-number', 0],
    ['18 +', 'no-digits', 4],
    ['18 # 2', 'not-understood', 3],
    ['18 mm in', 'two-units', 6],
  ])('refuses %j and names the place', (text, code, at) => {
    expect(parseDrawnSize(text, metric)).toMatchObject({ kind: 'error', code, at, asTyped: text });
  });
});
