import { describe, expect, it } from 'vitest';
import { probabilityBetween } from '@/lib/maths/fit/probability-between';

describe('probabilityBetween', () => {
  it('gives the coverages of one, two and three standard uncertainties', () => {
    // JCGM 100 Table G.2: 68.27, 95.45 and 99.73 %; the digits are erf(k / sqrt 2).
    const within = (k: number) => probabilityBetween({ value: 0, u: 1, lower: -k, upper: k });
    expect(within(1)).toBeCloseTo(0.682689492137086, 12);
    expect(within(2)).toBeCloseTo(0.954499736103642, 12);
    expect(within(3)).toBeCloseTo(0.99730020393674, 12);
  });

  it('keeps its digits far out in either tail', () => {
    // PHI(-8) - PHI(-9) = 6.220960574e-16 - 1.128588406e-19 (Abramowitz and Stegun 26.2).
    const wanted = 6.22096057427178e-16 - 1.12858840595384e-19;
    const above = probabilityBetween({ value: 0, u: 1, lower: 8, upper: 9 });
    const below = probabilityBetween({ value: 0, u: 1, lower: -9, upper: -8 });
    expect(above / wanted).toBeCloseTo(1, 9);
    expect(below / wanted).toBeCloseTo(1, 9);
  });

  it('knows for certain when nothing is uncertain, the limits counted in', () => {
    const at = (value: number) => probabilityBetween({ value, u: 0, lower: 1, upper: 2 });
    expect([at(0.9), at(1), at(1.5), at(2), at(2.1)]).toEqual([0, 1, 1, 1, 0]);
  });

  it('takes a limit that is not there', () => {
    const half = probabilityBetween({ value: 5, u: 2, lower: 5, upper: Infinity });
    expect(half).toBeCloseTo(0.5, 14);
  });

  it.each([
    ['conformance-probability/value', { value: NaN }],
    ['conformance-probability/limits', { lower: 2 }],
    ['conformance-probability/limits', { upper: NaN }],
    ['conformance-probability/uncertainty', { u: Infinity }],
    ['probability-between/place', { value: NaN, u: 0 }],
    ['probability-between/limits', { upper: NaN, u: 0 }],
    ['probability-between/limits', { lower: 2, u: 0 }],
  ])('refuses by %s', (code, part) => {
    const good = { value: 0, u: 1, lower: -1, upper: 1 };
    expect(() => probabilityBetween({ ...good, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
