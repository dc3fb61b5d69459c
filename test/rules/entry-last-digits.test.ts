import { describe, expect, it } from 'vitest';
import { entryLastDigits, type LastDigitsFacts } from '@/lib/rules/entry-last-digits';
import { entryNeighbours } from '@/lib/rules/entry-neighbours';
import { entryOffer } from '@/lib/rules/entry-offer';
import { entryReading } from '@/lib/rules/entry-reading';
import { slipOf } from '@/lib/rules/slip';
import { doubtedText } from '@/lib/rules/slips/doubted-text';
import type { SlipFacts } from '@/lib/rules/slips/slip-facts';
import { jobView } from '@/lib/rules/job-view';
import { parseLength } from '@/lib/units/parse-length';
import { exampleSheet } from './example-sheet';
import { mm, um } from './make';

// Common practice, no source: what is said aloud at a bench is "and thirty-four", and everyone knows of what.

const inch = 25_400_000_000;
const tenth = 2_540_000; // 0.0001 in

const mic = (...readings: number[]): LastDigitsFacts => ({
  unit: 'mm',
  resolutionPm: um,
  neighboursPm: readings.map((value) => Math.round(value * mm)),
});
const sizes = (text: string, facts: LastDigitsFacts) =>
  entryLastDigits(text, facts)?.sizesPm.map((pm) => pm / mm) ?? null;

describe('entryLastDigits', () => {
  it('asks between two sizes that are as near, though both are near', () => {
    // 17.990 is 0.001 under the lower, 18.000 is 0.001 over the upper.
    expect(sizes('0', mic(17.991, 17.999))).toEqual([17.99, 18]);
  });

  it.each([
    // What was typed, beside what, and the whole size.
    ['34', [18.331, 18.336], [18.334]],
    ['34', [18.331], [18.334]],
    ['4', [18.331, 18.336], [18.334]],
    ['334', [18.331, 18.336], [18.334]],
    ['04', [18.001, 18.002], [18.004]],
    ['00', [18.001], [18]],
    [' 34 ', [18.331], [18.334]],
  ])('makes %s beside %j one size', (text, beside, whole) => {
    expect(sizes(text, mic(...beside))).toEqual(whole);
  });

  it.each([
    // Over the edge of the place left out: the nearest is not what the leading figures say.
    ['01', [17.998, 17.999], [18.001, 17.901]],
    ['99', [18.001, 18.002], [17.999, 18.099]],
    // Neighbours that do not agree in the figures left out.
    ['00', [17.999, 18.001], [18, 17.9]],
    // Half way between two: as near to one as to the other.
    ['81', [18.331], [18.281, 18.381]],
    // Far from all of them, either way.
    ['75', [18.331], [18.375, 18.275]],
    ['8', [18.332], [18.328, 18.338]],
    // The figures as they stand are a likely size.
    ['18', [18.001, 18.003], [18, 18.018]],
  ])('asks about %s beside %j, the likeliest first', (text, beside, asked) => {
    expect(sizes(text, mic(...beside))).toEqual(asked);
  });

  it.each([
    '18.34',
    '.34',
    '+34',
    '-4',
    '34 mm',
    '3/4',
    '34"',
    '',
    '3 4',
    '8334',
    '18334',
    '1234567',
    'x',
  ])('takes %j for no last figures of 18.331', (text) => {
    expect(sizes(text, mic(18.331))).toBeNull();
  });

  it('says nothing without neighbours, or where they leave too much open', () => {
    expect(sizes('34', mic())).toBeNull();
    expect(sizes('4', mic(18.31, 18.37, 18.34, 18.32, 18.35))).toBeNull();
  });

  it('ends at the last place of the gauge', () => {
    const caliper = { ...mic(18.31, 18.36), resolutionPm: 10 * um };
    expect(sizes('34', caliper)).toEqual([18.34]);
    expect(entryLastDigits('34', caliper)?.resolutionPm).toBe(10 * um);
    const halves = { ...mic(18.31), resolutionPm: 5 * um };
    expect(sizes('315', halves)).toEqual([18.315]);
  });

  it('reads inches in ten-thousandths', () => {
    const facts = { unit: 'in' as const, resolutionPm: tenth, neighboursPm: [0.9837 * inch] };
    expect(entryLastDigits('41', facts)).toEqual({ sizesPm: [0.9841 * inch], resolutionPm: tenth });
  });

  it('always ends in the figures typed, whatever the neighbours', () => {
    for (let low = 5_000; low < 5_400; low += 7) {
      for (const text of ['0', '7', '03', '50', '99', '123']) {
        for (const pm of entryLastDigits(text, mic(low / 1000))?.sizesPm ?? []) {
          if (pm === Number(text) * mm) continue;
          expect(String(Math.round(pm / um)).endsWith(text)).toBe(true);
        }
      }
    }
  });
});

describe('entryReading', () => {
  const setting = { decimal: '.', unit: 'mm', nominalPm: 18 * mm, kind: 'outside' } as const;

  it('makes the figures whole where only the last are typed, and leaves them alone where not', () => {
    expect(entryReading('34', setting, mic(18.331))).toMatchObject({
      kind: 'length',
      meaning: { sizePm: 18_334 * um, resolutionPm: um, isRelative: false, unit: 'mm' },
    });
    expect(entryReading('34', setting, null)).toMatchObject({ meaning: { sizePm: 34 * mm } });
    expect(entryReading('18.34', setting, mic(18.331))).toMatchObject({
      meaning: { sizePm: 18_340 * um },
    });
  });

  it('asks which', () => {
    expect(entryReading('01', setting, mic(17.999))).toMatchObject({
      kind: 'question',
      code: 'last-digits',
      meanings: [{ sizePm: 18_001 * um }, { sizePm: 17_901 * um }],
    });
  });
});

const facts: SlipFacts = {
  kind: 'outside',
  nominalPm: 18 * mm,
  limits: { lowerPm: null, upperPm: null },
  othersPm: [18_331 * um, 18_333 * um],
  beforeCutPm: null,
  gauge: {
    kind: 'micrometer',
    unit: 'mm',
    resolutionPm: um,
    uncertaintyPm: null,
    rangeLowPm: 0,
    rangeHighPm: 25 * mm,
  },
  repeatPm: um,
  setting: { decimal: '.', unit: 'mm', nominalPm: 18 * mm },
  elsewhere: [],
};

describe('entryOffer', () => {
  const offer = (text: string, over: Partial<SlipFacts> = {}) => {
    const parsed = parseLength(text, facts.setting);
    if (parsed.kind !== 'length') throw new Error(text);
    const given = { ...facts, ...over };
    return (
      entryOffer(text, parsed, mic(...given.othersPm.map((pm) => pm / mm)), given)?.map(
        ({ sizePm }) => sizePm / mm,
      ) ?? null
    );
  };

  it('offers the whole size where the figures as they stand are no likely reading', () => {
    expect(offer('34')).toEqual([18.334, 34]);
  });

  it('offers nothing where the text is likely as it stands, or its last figures are a slip too', () => {
    expect(offer('18.334')).toBeNull();
    expect(offer('18', { othersPm: [18 * mm, 18_001 * um] })).toBeNull();
    expect(offer('99', { repeatDegrees: 5 })).toBeNull();
  });
});

describe('the text that is looked at for a slip', () => {
  it('is the whole size where its last figures were typed, else what was typed', () => {
    const of = (text: string, valuePm: number) =>
      doubtedText({ text, valuePm, resolutionPm: um }, facts.setting);
    expect(of('34', 18_334 * um)).toBe('18.334');
    expect(of('18', 18 * mm)).toBe('18');
    expect(of('+0.334', 18_334 * um)).toBe('+0.334');
  });

  it('finds figures swapped among the last', () => {
    const reading = { text: '43', valuePm: 18_343 * um, resolutionPm: um };
    expect(slipOf(reading, { ...facts, othersPm: [18_334 * um] })).toMatchObject({
      kind: 'swapped figures',
      insteadPm: 18_334 * um,
    });
  });
});

describe('entryNeighbours', () => {
  const view = jobView(exampleSheet());
  const idOf = (mark: string) => view.sheet.pieces.find((piece) => piece.mark === mark)!.id;
  const outside = view.sheet.features.find(({ balloon }) => balloon === '4')!.id;

  it('are the readings of this piece that count', () => {
    const near = entryNeighbours(view, view.cell(idOf('P5'), outside)).map((pm) => pm / mm);
    expect(near).toHaveLength(4); // the held 18.498 is none
    expect(Math.max(...near)).toBeLessThan(18);
  });

  it('are the latest of the other pieces where nothing was read of this one', () => {
    const near = entryNeighbours(view, view.cell(idOf('P8'), outside));
    expect(near).toHaveLength(6);
  });
});
