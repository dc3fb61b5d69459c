import { describe, expect, it } from 'vitest';
import { typedDegrees } from '@/lib/rules/cuts/typed-degrees';
import { dialFrom, dialUnit } from '@/lib/rules/cuts/slide';
import {
  typedDialUnit,
  typedSlide,
  type KeptSlide,
  type TypedSlide,
} from '@/lib/rules/cuts/typed-slide';
import { um } from '../make';

const setting = { decimal: '.', unit: 'mm' } as const;
const plain: TypedSlide = {
  dial: 'radius',
  division: '0.01',
  fineFeed: '',
  bites: '',
  lap: '',
  dialAt: '',
  tool: '',
};
const read = (over: Partial<TypedSlide> = {}, own: Parameters<typeof typedSlide>[1] = setting) =>
  typedSlide({ ...plain, ...over }, own);

describe('typedSlide', () => {
  it('takes a slide with nothing but its division', () => {
    expect(read()).toEqual({
      kind: 'slide',
      slide: { dial: 'radius', divisionPm: 10 * um, fineFeed: 1, bitesPm: 0, unit: 'mm' },
      lapPm: 0,
      dialAtPm: null,
    });
  });

  it('takes the name of a machine as it is called', () => {
    expect(read({ tool: ' Big lathe ' })).toMatchObject({ slide: { tool: 'Big lathe' } });
    expect(read({ tool: '  ' })).toEqual(read());
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

describe('a slide that is kept already', () => {
  const thou = 25_400_000;
  const kept: KeptSlide = {
    slide: { dial: 'radius', divisionPm: thou, fineFeed: 5.74, bitesPm: 17_699, unit: 'in' },
    lapPm: 6_350_001,
    dialAtPm: 134 * thou,
    typed: { dial: 'radius', division: '0.001', fineFeed: '5.74', bites: '0.000', lap: '0.006', dialAt: '0.134', tool: '' },
  }; // prettier-ignore
  const inInches = { decimal: '.', unit: 'mm', dialUnit: 'in' } as const;

  it('stays to the last picometre where no field was touched', () => {
    const { slide, lapPm, dialAtPm } = kept;
    expect(typedSlide(kept.typed, inInches, kept)).toEqual({
      kind: 'slide',
      slide,
      lapPm,
      dialAtPm,
    });
  });

  it('changes in the field that was touched alone, read in the unit of the dial', () => {
    const touched = typedSlide({ ...kept.typed, dialAt: '0.150' }, inInches, kept);
    expect(touched).toMatchObject({ slide: kept.slide, lapPm: 6_350_001, dialAtPm: 150 * thou });
    const square = typedSlide({ ...kept.typed, fineFeed: '' }, inInches, kept);
    const onDial = dialFrom(kept.slide.bitesPm, kept.slide);
    expect(square).toMatchObject({ slide: { fineFeed: 1, bitesPm: 2 * onDial, divisionPm: thou } });
  });

  it('takes what is on the dial in the unit its division is typed in, and the lap in that of the job', () => {
    expect(read({ division: '0.001 in', bites: '.002', dialAt: '0.134', lap: '0.006' })).toEqual({
      kind: 'slide',
      slide: { dial: 'radius', divisionPm: thou, fineFeed: 1, bitesPm: 4 * thou, unit: 'in' },
      lapPm: 6 * um,
      dialAtPm: 134 * thou,
    });
    expect(typedDialUnit('', setting)).toBe('mm');
    expect(typedDialUnit('1 thou', setting)).toBe('in');
  });
});

describe('dialUnit', () => {
  it.each([
    [{ divisionPm: 25_400_000, unit: 'in' }, 'mm', 'in'],
    [{ divisionPm: 25_400_000 }, 'mm', 'in'],
    [{ divisionPm: 12_700_000 }, 'mm', 'in'],
    [{ divisionPm: 10 * um }, 'in', 'mm'],
    [{ divisionPm: 20 * um }, 'mm', 'mm'],
    [{ divisionPm: 127 * um }, 'in', 'in'],
    [{ divisionPm: 127 * um }, 'mm', 'mm'],
    [{ divisionPm: 2_500_000 }, 'mm', 'mm'],
  ] as const)('of %j in a job in %s is %s', (slide, job, unit) => {
    expect(dialUnit(slide, job)).toBe(unit);
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
