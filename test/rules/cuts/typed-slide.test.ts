import { describe, expect, it } from 'vitest';
import { typedDegrees } from '@/lib/rules/cuts/typed-degrees';
import { typedSlide, type TypedSlide } from '@/lib/rules/cuts/typed-slide';
import { um } from '../make';

const setting = { decimal: '.', unit: 'mm' } as const;
const plain: TypedSlide = {
  dial: 'radius',
  division: '0.01',
  fineFeed: '',
  bites: '',
  lap: '',
  dialAt: '',
};
const read = (over: Partial<TypedSlide> = {}, own: Parameters<typeof typedSlide>[1] = setting) =>
  typedSlide({ ...plain, ...over }, own);

describe('typedSlide', () => {
  it('takes a slide with nothing but its division', () => {
    expect(read()).toEqual({
      kind: 'slide',
      slide: { dial: 'radius', divisionPm: 10 * um, fineFeed: 1, bitesPm: 0 },
      lapPm: 0,
      dialAtPm: null,
    });
  });

  it('keeps the thinnest cut on diameter, as it is typed on the dial', () => {
    expect(read({ bites: '0.01' })).toMatchObject({ slide: { bitesPm: 20 * um } });
    expect(read({ bites: '0.1', fineFeed: '10' })).toMatchObject({ slide: { bitesPm: 20 * um } });
    expect(read({ bites: '0.01', dial: 'diameter' })).toMatchObject({
      slide: { bitesPm: 10 * um },
    });
  });

  it('reads every field as lengths are read everywhere: thou, the comma, fractions of nothing', () => {
    const inch = { decimal: '.', unit: 'in' } as const;
    expect(read({ division: '.001', dialAt: '.134' }, inch)).toMatchObject({
      slide: { divisionPm: 25_400_000 },
      dialAtPm: 134 * 25_400_000,
    });
    expect(read({ division: '1 thou' })).toMatchObject({ slide: { divisionPm: 25_400_000 } });
    expect(read({ lap: '0,006', fineFeed: '5,5' }, { decimal: ',', unit: 'mm' })).toMatchObject({
      lapPm: 6 * um,
      slide: { fineFeed: 5.5 },
    });
  });

  it.each([
    [{ division: '' }, ['division']],
    [{ division: '0' }, ['division']],
    [{ division: 'ten' }, ['division']],
    [{ division: '+0.01' }, ['division']],
    [{ division: '20' }, ['division']],
    [{ fineFeed: '0' }, ['fineFeed']],
    [{ fineFeed: 'a' }, ['fineFeed']],
    [{ bites: '-1', lap: 'x', dialAt: '?' }, ['bites', 'lap', 'dialAt']],
  ] as [Partial<TypedSlide>, string[]][])('names what cannot be so: %j', (over, fields) => {
    expect(read(over)).toEqual({ kind: 'wrong', fields });
  });
});

describe('typedDegrees', () => {
  it.each([
    ['41', 41_000],
    ['21.5', 21_500],
    ['21.5 °C', 21_500],
    ['-5c', -5_000],
    ['\u22125', -5_000],
    ['68 F', 20_000],
    ['', null],
    ['warm', null],
    ['1000', null],
    ['400.001', null],
    ['41 K', null],
  ])('reads "%s"', (text, milliC) => {
    expect(typedDegrees(text, '.')).toBe(milliC);
    expect(typedDegrees(text.replace('.', ','), ',')).toBe(milliC);
  });
});
