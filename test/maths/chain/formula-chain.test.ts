import { describe, expect, it } from 'vitest';
import { formulaChain } from '@/lib/maths/chain/formula-chain';

const clutch = {
  a: { value: 27.645, halfTolerance: 0.05 },
  c: { value: 11.43, halfTolerance: 0.01 },
  e: { value: 50.8, halfTolerance: 0.0125 },
};

describe('formulaChain', () => {
  it('agrees with the one-way clutch of Fortini', () => {
    // Fortini 1967, used by Chase and others: 7.0184 degrees, slopes -11.91, -23.73, 11.82 deg/mm.
    const found = formulaChain('acos((a + c)/(e - c)) in degrees', clutch);
    expect(found.value).toBeCloseTo(7.0184, 4);
    expect(found.sensitivities.a).toBeCloseTo(-11.91, 2);
    expect(found.sensitivities.c).toBeCloseTo(-23.73, 2);
    expect(found.sensitivities.e).toBeCloseTo(11.82, 2);
    // 11.9105 x 0.05 + 23.7317 x 0.01 + 11.8212 x 0.0125 = 0.98061, by hand.
    expect(found.worstHalfLinear).toBeCloseTo(0.98061, 4);
    expect(found.rssHalfLinear).toBeCloseTo(0.65788, 4);
    // Corners by python3: degrees(acos((27.695 + 11.44)/(50.7875 - 11.44))) and the opposite one.
    expect(found.corners.least).toBeCloseTo(5.9574, 3);
    expect(found.corners.most).toBeCloseTo(7.9385, 3);
  });

  it('is a plain chain for a plain sum', () => {
    const found = formulaChain('a - 2 b', {
      a: { value: 10, halfTolerance: 0.1 },
      b: { value: 3, halfTolerance: 0.2 },
    });
    expect(found.value).toBe(4);
    expect(found.worstHalfLinear).toBeCloseTo(0.5, 9);
    expect(found.rssHalfLinear).toBeCloseTo(Math.hypot(0.1, 0.4), 9);
    expect(found.corners.least).toBeCloseTo(3.5, 12);
    expect(found.corners.most).toBeCloseTo(4.5, 12);
  });

  it.each([
    ['formula-chain/unknown', 'a + x', clutch],
    ['formula-chain/link', 'a', { a: { value: 1, halfTolerance: -1 } }],
    ['formula-chain/link', 'a', { a: { value: NaN, halfTolerance: 1 } }],
    ['formula-chain/no-value', 'sqrt(a)', { a: { value: 1, halfTolerance: 2 } }],
    ['formula/text', 'a +', clutch],
    ['formula-chain/too-many', Array.from({ length: 17 }, (_, i) => `x${i}`).join(' + '), {}],
  ])('refuses by %s', (code, text, links) => {
    expect(() => formulaChain(text, links)).toThrow(expect.objectContaining({ code }));
  });
});
