import { describe, expect, it } from 'vitest';
import { nearestFits } from '@/lib/maths/iso286/nearest-fits';

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
