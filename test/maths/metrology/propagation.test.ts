import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinedUncertainty } from '@/lib/maths/metrology/combined-uncertainty';
import { effectiveDegrees } from '@/lib/maths/metrology/effective-degrees';
import { expandedUncertainty } from '@/lib/maths/metrology/expanded-uncertainty';
import { propagateUncertainty } from '@/lib/maths/metrology/propagate-uncertainty';
import { secondOrderTerms } from '@/lib/maths/metrology/second-order-terms';
import { sensitivities } from '@/lib/maths/metrology/sensitivities';
import {
  degreesFromDoubt,
  fromArcsine,
  fromCertificate,
  fromConfidence,
  fromRectangular,
  fromResolution,
  fromTriangular,
} from '@/lib/maths/metrology/type-b';
import { expectNear } from '../near';

const half = ([a, b]: readonly number[]) => (a! - b!) / 2;

describe('type B uncertainties', () => {
  // JCGM 100:2008 4.3.7 (rectangular), 4.3.9 (triangular), H.1 (arcsine), F.2.2.1 (resolution).
  it('come from the shape of what is known', () => {
    expectNear(fromRectangular(0.003), 0.001732050808, { rel: 1e-9 });
    expectNear(fromTriangular(0.006), 0.002449489743, { rel: 1e-9 });
    expectNear(fromArcsine(0.5), 0.3535533906, { rel: 1e-9 });
    expectNear(fromResolution(0.001), 0.00028867513459, { rel: 1e-9 });
  });

  it('come from certificates as JCGM 100 4.3.4 and H.1 read them', () => {
    // U = 240 micro-ohm at three standard deviations: u = 80 (JCGM 100 4.3.3, example).
    expect(fromCertificate(240, 3)).toBe(80);
    // 10 nm at 95 % with 5 degrees of freedom: 3.9 nm (JCGM 100 H.1.3.2, printed to two figures).
    expectNear(fromConfidence(10, 0.95, 5), 3.9, { abs: 0.05 });
    expectNear(fromConfidence(1.959963984540054, 0.95), 1, { rel: 1e-14 });
  });

  it('carry degrees of freedom from their own doubt', () => {
    // JCGM 100 G.4.2: 25 % doubt is 8 degrees of freedom.
    expectNear(degreesFromDoubt(0.25), 8, { rel: 1e-15 });
  });

  it('refuse amounts below zero and shares that are none', () => {
    expect(() => fromRectangular(-1)).toThrow('fromRectangular requires an amount');
    expect(() => fromResolution(NaN)).toThrow('got NaN');
    expect(() => fromCertificate(1, 0)).toThrow('got 0');
    expect(() => fromConfidence(1, 1)).toThrow('got 1');
    expect(() => degreesFromDoubt(0)).toThrow('got 0');
  });
});

describe('sensitivities', () => {
  it('agree with the derivatives taken by hand', () => {
    const model = ([x, y]: readonly number[]) => Math.exp(x! / 3) * Math.sin(y!);
    const [dx, dy] = sensitivities(model, [1.3, 0.4], [0.01, 0.01]);
    expectNear(dx!, (Math.exp(1.3 / 3) * Math.sin(0.4)) / 3, { rel: 1e-10 });
    expectNear(dy!, Math.exp(1.3 / 3) * Math.cos(0.4), { rel: 1e-10 });
  });

  it('find a step by themselves, also next to the end of a model', () => {
    expectNear(sensitivities(([x]) => x! ** 3, [7])[0]!, 147, { rel: 1e-9 });
    const [near] = sensitivities(([x]) => Math.asin(x!), [0.999], [0.5]);
    expectNear(near!, 1 / Math.sqrt(1 - 0.999 ** 2), { rel: 1e-7 });
  });

  it('are exact to rounding for straight models of any slope', () => {
    const slopes = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(slopes, slopes, (a, b) => {
        const [da, db] = sensitivities(([x, y]) => a * x! + b * y!, [3, 4], [0.1, 0.1]);
        expectNear(da!, a, { abs: 1e-10 });
        expectNear(db!, b, { abs: 1e-10 });
      }),
    );
  });

  it('refuse a model without values and scales that do not fit', () => {
    expect(() => sensitivities(() => NaN, [1])).toThrow('got none at input 0');
    expect(() => sensitivities(([x]) => x!, [1], [1, 2])).toThrow('got 2');
  });
});

describe('combinedUncertainty', () => {
  it('adds squares for inputs that know nothing of each other', () => {
    expectNear(combinedUncertainty([3, -4]), 5, { rel: 1e-15 });
  });

  it('adds straight when errors are shared, and cancels in a difference', () => {
    // JCGM 100 5.2.2, note 1: ten resistors calibrated with one standard, r = 1, add linearly.
    const all = [0, 1, 2].flatMap((i) =>
      [0, 1, 2].filter((j) => j > i).map((j) => ({ first: i, second: j, coefficient: 1 })),
    );
    expectNear(combinedUncertainty([1, 1, 1], all), 3, { rel: 1e-15 });
    const shared = [{ first: 0, second: 1, coefficient: 1 }];
    expect(combinedUncertainty([0.1, -0.1], shared)).toBe(0);
  });

  it('refuses correlations that are none', () => {
    const bad = (first: number, second: number, coefficient: number) => () =>
      combinedUncertainty([1, 1], [{ first, second, coefficient }]);
    expect(bad(0, 1, 1.1)).toThrow('got 0, 1 and 1.1');
    expect(bad(0, 2, 0.5)).toThrow('got 0, 2');
    expect(bad(1, 1, 0.5)).toThrow('got 1, 1');
    expect(bad(0, 1, NaN)).toThrow('and NaN');
    expect(() => combinedUncertainty([1, NaN])).toThrow('got NaN at index 1');
  });
});

describe('effectiveDegrees', () => {
  it('follows the worked example of the guide', () => {
    // JCGM 100 G.4.1: relative parts 0.25, 0.57, 0.82 % from 10, 5 and 15 readings: 19.0 (printed).
    const found = effectiveDegrees([
      { contribution: 0.25, degrees: 9 },
      { contribution: -0.57, degrees: 4 },
      { contribution: 0.82, degrees: 14 },
    ]);
    expectNear(found, 19, { abs: 0.05 });
  });

  it('lies between the fewest and all degrees of freedom', () => {
    const part = fc.record({
      contribution: fc.double({ min: 0.01, max: 10, noNaN: true }),
      degrees: fc.integer({ min: 1, max: 100 }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const found = effectiveDegrees(parts);
        const all = parts.map(({ degrees }) => degrees);
        expect(found).toBeGreaterThan(Math.min(...all) * (1 - 1e-12));
        expect(found).toBeLessThan(all.reduce((sum, degrees) => sum + degrees, 0) * (1 + 1e-12));
      }),
    );
  });

  it('is without end when nothing is in doubt', () => {
    expect(effectiveDegrees([{ contribution: 1, degrees: Infinity }])).toBe(Infinity);
    expect(effectiveDegrees([{ contribution: 0, degrees: 3 }])).toBe(Infinity);
    expect(() => effectiveDegrees([{ contribution: 1, degrees: 0 }])).toThrow(
      'got 1 and 0 at index 0',
    );
  });
});

describe('expandedUncertainty', () => {
  it('takes the factor from the degrees of freedom', () => {
    // JCGM 100 table G.2: t at 95 % with 9 degrees of freedom 2.26; normal 1.960.
    expectNear(expandedUncertainty(2, 9, 0.95).factor, 2.26, { abs: 0.005 });
    expectNear(expandedUncertainty(2, 9, 0.95).expanded, 4.52, { abs: 0.01 });
    expectNear(expandedUncertainty(1, Infinity, 0.95).factor, 1.96, { abs: 5e-4 });
  });

  it('refuses less than one degree of freedom', () => {
    expect(() => expandedUncertainty(1, 0.5, 0.95)).toThrow('got 0.5');
    expect(() => expandedUncertainty(-1, 5, 0.95)).toThrow('got -1');
    expect(() => expandedUncertainty(1, 5, 1)).toThrow('got 1');
  });
});

describe('propagateUncertainty', () => {
  it('carries two depths to the middle between them', () => {
    // By hand: u^2 = (0.002^2 + 0.0015^2)/4; also dd-centred of test/reference/derived_dimensions.json.
    const found = propagateUncertainty(half, [
      { value: 42.016, u: 0.002 },
      { value: 5.032, u: 0.0015 },
    ]);
    expectNear(found.value, 18.492, { rel: 1e-15 });
    expectNear(found.u, 0.00125, { rel: 1e-10 });
    expectNear(found.contributions[1]!, 0.00075, { rel: 1e-10 });
    expectNear(found.sensitivities[1]!, -0.5, { rel: 1e-10 });
    expect(found.degrees).toBe(Infinity);
  });

  it('counts degrees of freedom only for independent inputs', () => {
    const inputs = [
      { value: 1, u: 0.1, degrees: 4 },
      { value: 2, u: 0.1 },
    ];
    expectNear(propagateUncertainty(half, inputs).degrees!, 16, { rel: 1e-8 });
    const correlations = [{ first: 0, second: 1, coefficient: 0.3 }];
    expect(propagateUncertainty(half, inputs, { correlations }).degrees).toBeUndefined();
    const none = [{ first: 0, second: 1, coefficient: 0 }];
    expect(propagateUncertainty(half, inputs, { correlations: none }).degrees).toBeDefined();
  });

  it('uses the sensitivities it is given', () => {
    const inputs = [{ value: 1, u: 0.1 }];
    expectNear(propagateUncertainty(([x]) => x!, inputs, { sensitivities: [3] }).u, 0.3, {
      rel: 1e-15,
    });
    const twoSlopes = { sensitivities: [1, 2] };
    expect(() => propagateUncertainty(([x]) => x!, inputs, twoSlopes)).toThrow('got 2');
  });

  it('refuses inputs and models that are no numbers', () => {
    expect(() => propagateUncertainty(half, [{ value: NaN, u: 1 }])).toThrow(
      'got NaN and 1 at index 0',
    );
    expect(() => propagateUncertainty(half, [{ value: 1, u: -1 }])).toThrow('got 1 and -1');
    expect(() => propagateUncertainty(() => Infinity, [{ value: 1, u: 1 }])).toThrow(
      'got Infinity',
    );
  });
});

describe('secondOrderTerms', () => {
  it('give the exact variance of a square', () => {
    // y = x^2, x normal about 0: variance 2 u^4, first order gives nothing. Second-order formula: (1/2)(2)^2 u^4.
    const [term] = secondOrderTerms(([x]) => x! ** 2, [0], [0.3]);
    expectNear(term!.variance, 2 * 0.3 ** 4, { rel: 1e-12 });
  });

  it('give the exact variance of a product', () => {
    // Var(xy) = x^2 v^2 + y^2 u^2 + u^2 v^2: the last term is what the first order lacks.
    const terms = secondOrderTerms(([x, y]) => x! * y!, [3, 4], [0.1, 0.2]);
    const cross = terms.find(({ first, second }) => first === 0 && second === 1);
    expectNear(cross!.variance, 0.1 ** 2 * 0.2 ** 2, { rel: 1e-9 });
    expect(terms.filter(({ first, second }) => first === second)).toHaveLength(2);
  });

  it('take in the third derivatives', () => {
    // y = x^3 at 2: (1/2)(6x)^2 + 3x^2 x 6 = 72 + 72 in u^4; a cubic has no higher ones to disturb.
    const [term] = secondOrderTerms(([x]) => x! ** 3, [2], [0.01]);
    expectNear(term!.variance, 144e-8, { rel: 1e-6 });
    // y = x z^2 at (2, 3): f_xz^2 + f_x f_xzz + f_z f_zxx = 36 + 9 x 2 + 0 = 54 in u^2 v^2.
    const terms = secondOrderTerms(([x, z]) => x! * z! ** 2, [2, 3], [0.01, 0.01]);
    const cross = terms.find(({ first, second }) => first === 0 && second === 1);
    expectNear(cross!.variance, 54e-8, { rel: 1e-5 });
    const turned = secondOrderTerms(([x, z]) => z! * x! ** 2, [3, 2], [0.01, 0.01]);
    expectNear(turned.find(({ second }) => second === 1)!.variance, 54e-8, { rel: 1e-5 });
  });

  it('leave out what has no uncertainty', () => {
    expect(secondOrderTerms(([x, y]) => x! * y!, [3, 4], [0.1, 0])).toHaveLength(1);
  });

  it('refuse models without values nearby', () => {
    expect(() => secondOrderTerms(([x]) => Math.sqrt(x!), [0.1], [0.2])).toThrow('near input 0');
    expect(() => secondOrderTerms(([x]) => x!, [0.1], [])).toThrow('got 0');
  });
});
