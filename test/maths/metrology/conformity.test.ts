import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { acceptanceLimitRelative } from '@/lib/maths/metrology/acceptance-limit-relative';
import { conformanceProbability } from '@/lib/maths/metrology/conformance-probability';
import { conformityZones } from '@/lib/maths/metrology/conformity-zones';
import { decideConformity } from '@/lib/maths/metrology/decide-conformity';
import { falseAcceptanceAtLimit } from '@/lib/maths/metrology/false-acceptance-at-limit';
import { globalRisks } from '@/lib/maths/metrology/global-risks';
import { guardBand, guardFactorDefault } from '@/lib/maths/metrology/guard-band';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { expectNear } from '../near';

const limits = { lower: 24.98, upper: 25.01 };

describe('conformanceProbability', () => {
  it('agrees with the examples of the guide', () => {
    // JCGM 106:2012 7.4 (breakdown voltage, one limit, printed 0.92) and 7.5 (two limits, 0.66).
    expectNear(conformanceProbability(-5.47, 0.05, { upper: -5.4 }), 0.92, { abs: 0.005 });
    expectNear(conformanceProbability(13.6, 1.8, { lower: 12.5, upper: 16.3 }), 0.66, {
      abs: 0.005,
    });
  });

  it('is one half on a limit far from the other', () => {
    expectNear(conformanceProbability(25.01, 0.0001, limits), 0.5, { rel: 1e-12 });
    expectNear(conformanceProbability(24.98, 0.0001, limits), 0.5, { rel: 1e-12 });
  });

  it('keeps its digits far outside', () => {
    // PHI(-10) = 7.6198530241605e-24: mpmath 1.3; the other limit is 30 sigma further.
    const upper = conformanceProbability(25.02, 0.001, limits);
    expectNear(upper, 7.61985302416e-24, { rel: 1e-10 });
    expectNear(conformanceProbability(24.97, 0.001, limits), upper, { rel: 1e-9 });
  });

  it('does not change when everything is mirrored', () => {
    const places = fc.double({ min: -3, max: 3, noNaN: true });
    fc.assert(
      fc.property(places, (y) => {
        const one = conformanceProbability(y, 0.7, { lower: -1, upper: 2 });
        const other = conformanceProbability(-y, 0.7, { lower: -2, upper: 1 });
        expectNear(one, other, { rel: 1e-12 });
      }),
    );
  });

  it('refuses no limit, limits the wrong way round and no uncertainty', () => {
    expect(() => conformanceProbability(1, 1, {})).toThrow('a limit, got none');
    expect(() => conformanceProbability(1, 1, { lower: 2, upper: 1 })).toThrow('got 2 and 1');
    expect(() => conformanceProbability(1, 0, limits)).toThrow('got 0');
    expect(() => conformanceProbability(NaN, 1, limits)).toThrow('got NaN');
  });
});

describe('guard bands', () => {
  it('are 1.65 u by default and z u exactly', () => {
    // ISO 14253-1:2017, from memory; the exact quantile of 95 % is 1.644854.
    expect(guardFactorDefault).toBe(1.65);
    expectNear(guardBand(0.002, 0.95), 0.003289707, { abs: 1e-9 });
    expect(guardBand(0.002, 0.5)).toBe(0);
  });

  it('of two u let through one bad piece in forty-four at the worst', () => {
    // JCGM 106:2012 8.3.2.2 on ISO 14253-1:1998: at most 2.3 % (printed).
    expectNear(falseAcceptanceAtLimit(2), 0.023, { abs: 5e-4 });
    expect(falseAcceptanceAtLimit(0)).toBe(0.5);
  });

  it('of a part of the reading move a speed limit as in the guide', () => {
    // JCGM 106:2012 8.3.3.3: 100 km/h, 2 %, 99.9 %: 107 km/h (printed, rounded up).
    expectNear(acceptanceLimitRelative(100, 0.02, 0.999), 106.59, { abs: 0.005 });
  });

  it('refuse what they cannot stand on', () => {
    expect(() => guardBand(-1, 0.95)).toThrow('got -1');
    expect(() => guardBand(1, 0.4)).toThrow('got 0.4');
    expect(() => falseAcceptanceAtLimit(NaN)).toThrow('got NaN');
    expect(() => acceptanceLimitRelative(0, 0.02, 0.9)).toThrow('got 0');
    expect(() => acceptanceLimitRelative(100, 0.5, 0.999)).toThrow('got 0.5');
    expect(() => acceptanceLimitRelative(100, 0.02, 1)).toThrow('got 1');
  });
});

describe('decideConformity', () => {
  const guard = 0.0033;

  it.each([
    [25.006, 'inside'],
    [25.0068, 'unsure'],
    [25.0132, 'unsure'],
    [25.0134, 'outside'],
    [24.9834, 'inside'],
    [24.9832, 'unsure'],
    [24.9768, 'unsure'],
    [24.9766, 'outside'],
  ] as const)('says of %s that it is %s', (y, verdict) => {
    expect(decideConformity(y, limits, guard)).toBe(verdict);
  });

  it('counts the edges of the inside as inside and of the outside as unsure', () => {
    const edge = { lower: 0, upper: 8 };
    expect(decideConformity(1, edge, 1)).toBe('inside');
    expect(decideConformity(7, edge, 1)).toBe('inside');
    expect(decideConformity(-1, edge, 1)).toBe('unsure');
    expect(decideConformity(9, edge, 1)).toBe('unsure');
  });

  it('minds only the limit there is', () => {
    expect(decideConformity(-1000, { upper: 5 }, 1)).toBe('inside');
    expect(decideConformity(1000, { lower: 5 }, 1)).toBe('inside');
    expect(decideConformity(3.9, { lower: 5 }, 1)).toBe('outside');
  });

  it('proves nothing inside when the tolerance is narrower than two guards', () => {
    const narrow = { lower: 0, upper: 1 };
    expect(conformityZones(narrow, 0.6).isEmpty).toBe(true);
    expect(conformityZones(narrow, 0.5).isEmpty).toBe(false);
    fc.assert(
      fc.property(fc.double({ min: -2, max: 3, noNaN: true }), (y) => {
        expect(decideConformity(y, narrow, 0.6)).not.toBe('inside');
      }),
    );
  });

  it('gives the maker the limits to work to', () => {
    expect(conformityZones({ lower: 0, upper: 8 }, 1)).toEqual({
      accept: { lower: 1, upper: 7 },
      reject: { lower: -1, upper: 9 },
      isEmpty: false,
    });
    expect(conformityZones({ upper: 8 }, 1).accept).toEqual({ upper: 7 });
  });

  it('refuses what it cannot stand on', () => {
    expect(() => decideConformity(NaN, limits, 1)).toThrow('got NaN');
    expect(() => conformityZones(limits, -1)).toThrow('got -1');
    expect(conformityZones(limits, 0)).toMatchObject({ accept: limits, reject: limits });
    expect(() => conformityZones({}, 1)).toThrow('got none');
    expect(() => conformityZones({ lower: 1, upper: Infinity }, 1)).toThrow('got Infinity');
  });
});

describe('globalRisks', () => {
  const resistors = {
    lower: 1499.8,
    upper: 1500.2,
    acceptLower: 1499.82,
    acceptUpper: 1500.18,
    processMean: 1500,
    processSd: 0.12,
    u: 0.04,
  };

  it('agree with the resistors of the guide', () => {
    // JCGM 106:2012 9.5.4: 0.9 inside, consumer 1 %, producer 7 % (printed).
    const found = globalRisks(resistors);
    expectNear(found.conforming, 0.9, { abs: 0.005 });
    expectNear(found.consumer, 0.01, { abs: 0.0005 });
    expectNear(found.producer, 0.07, { abs: 0.005 });
  });

  it('agree with a count of drawn pieces off centre', () => {
    const off = { ...resistors, processMean: 1500.07, acceptUpper: 1500.19 };
    const { consumer, producer } = globalRisks(off);
    const count = (isWrong: (x: number, y: number) => boolean) =>
      monteCarlo(
        ([x, error]) => (isWrong(x!, x! + error!) ? 1 : 0),
        [
          { shape: 'normal', mean: off.processMean, sd: off.processSd },
          { shape: 'normal', mean: 0, sd: off.u },
        ],
        { draws: 200_000, seed: 106, coverage: 0.95 },
      ).value;
    const isInside = (x: number) => x >= off.lower && x <= off.upper;
    const isTaken = (y: number) => y >= off.acceptLower && y <= off.acceptUpper;
    // Five standard deviations of a count of 200 000: 5 sqrt(p/200000), p about 0.03 and 0.1.
    expectNear(
      consumer,
      count((x, y) => !isInside(x) && isTaken(y)),
      { abs: 0.002 },
    );
    expectNear(
      producer,
      count((x, y) => isInside(x) && !isTaken(y)),
      { abs: 0.0035 },
    );
  });

  it('trade one against the other as the acceptance limits move', () => {
    const wide = globalRisks({ ...resistors, acceptLower: 1499.78, acceptUpper: 1500.22 });
    const tight = globalRisks({ ...resistors, acceptLower: 1499.85, acceptUpper: 1500.15 });
    expect(wide.consumer).toBeGreaterThan(tight.consumer);
    expect(wide.producer).toBeLessThan(tight.producer);
  });

  it('refuse limits out of order and no spread', () => {
    expect(() => globalRisks({ ...resistors, lower: 1501 })).toThrow('limits in order');
    expect(() => globalRisks({ ...resistors, u: 0 })).toThrow('got 0.12 and 0');
  });
});
