import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { definedClasses } from '@/lib/maths/iso286/defined-classes';
import { nearestClasses } from '@/lib/maths/iso286/nearest-classes';
import { nearestFits } from '@/lib/maths/iso286/nearest-fits';

describe('nearestClasses', () => {
  it('finds the very class whose limits are wanted', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('g6', 'f7', 'h9', 'js7', 'n6', 'u6', 'H8', 'K7', 'D10', 'M6'),
        fc.double({ min: 4, max: 499, noNaN: true }),
        (text, nominalMm) => {
          const { side, upperUm, lowerUm } = classLimits(text, nominalMm);
          const [found] = nearestClasses({ side, nominalMm, upperUm, lowerUm, count: 1 });
          expect(found!.offUm).toBe(0);
          expect(classLimits(found!.text, nominalMm)).toEqual({ side, upperUm, lowerUm });
        },
      ),
      { numRuns: 40 },
    );
  });

  it('puts the nearest first by the worse of the two limits', () => {
    const wanted = { side: 'external', nominalMm: 25, upperUm: -9, lowerUm: -24 } as const;
    const found = nearestClasses({ ...wanted, count: 300 });
    expect(found[0]).toEqual({ text: 'g6', upperUm: -7, lowerUm: -20, offUm: 4 });
    expect(found.map((one) => one.offUm)).toEqual(
      found.map((one) => one.offUm).toSorted((a, b) => a - b),
    );
  });

  it.each([
    ['nearest-classes/limits', { upperUm: 0, lowerUm: 0 }],
    ['nearest-classes/limits', { upperUm: NaN, lowerUm: 0 }],
    ['nearest-classes/count', { count: 0 }],
    ['it-grade/size', { nominalMm: 4000 }],
  ])('refuses by %s', (code, part) => {
    const good = { side: 'internal', nominalMm: 25, upperUm: 20, lowerUm: 0, count: 1 } as const;
    expect(() => nearestClasses({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});

describe('definedClasses', () => {
  it('lists every class once and leaves out what the standard does not define', () => {
    const texts = definedClasses('external', 25).map((one) => one.text);
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts).toContain('j7');
    expect(texts).not.toContain('j9');
    expect(texts).not.toContain('cd6');
    expect(definedClasses('external', 8).map((one) => one.text)).toContain('cd6');
  });
});

describe('nearestFits', () => {
  const wanted = { nominalMm: 25, minClearanceUm: 7, maxClearanceUm: 41, count: 3 };

  it('finds H7/g6 from its own clearances on the hole basis and G7/h6 on the shaft basis', () => {
    expect(nearestFits({ ...wanted, basis: 'hole' })[0]).toEqual({
      text: 'H7/g6',
      minClearanceUm: 7,
      maxClearanceUm: 41,
      kind: 'clearance',
      offUm: 0,
      inside: true,
    });
    expect(nearestFits({ ...wanted, basis: 'shaft' })[0]!.text).toBe('G7/h6');
  });

  it('says whether the whole fit lies inside the wanted clearances', () => {
    const tighter = nearestFits({ ...wanted, minClearanceUm: 8, basis: 'hole' })[0]!;
    expect([tighter.text, tighter.inside, tighter.offUm]).toEqual(['H7/g6', false, 1]);
  });

  it('keeps to its basis and to partners of the same grade or one away', () => {
    const many = nearestFits({ ...wanted, count: 1000, basis: 'hole' });
    expect(many.length).toBeGreaterThan(100);
    for (const { text } of many) {
      const [, hole, shaft] = /^H(\d+)\/[a-z]+(\d+)$/.exec(text)!;
      expect([0, 1]).toContain(Number(hole) - Number(shaft));
    }
    for (const { text } of nearestFits({ ...wanted, count: 1000, basis: 'shaft' })) {
      const [, hole, shaft] = /^[A-Z]+(\d+)\/h(\d+)$/.exec(text)!;
      expect([0, 1]).toContain(Number(hole) - Number(shaft));
    }
  });

  it('works over 500 mm, where fine grades are not defined', () => {
    const found = nearestFits({
      nominalMm: 600,
      minClearanceUm: 22,
      maxClearanceUm: 136,
      basis: 'shaft',
      count: 1,
    });
    expect(found[0]!.text).toBe('G7/h6');
  });

  it.each([
    ['nearest-fits/clearances', { minClearanceUm: 41 }],
    ['nearest-fits/clearances', { maxClearanceUm: Infinity }],
    ['nearest-fits/count', { count: 1.5 }],
    ['it-grade/size', { nominalMm: 0 }],
  ])('refuses by %s', (code, part) => {
    expect(() => nearestFits({ ...wanted, basis: 'hole', ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
