import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix, type Pair } from '@/lib/maths/assignment/cost-matrix';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { pairPieces, type PairingPurpose } from '@/lib/maths/assignment/pair-pieces';
import { probabilityBetween } from '@/lib/maths/fit/probability-between';
import { expectNear } from '../near';
import { allPairings } from './brute-force';

const um = 1_000_000;
const sizes = (offsetsUm: readonly number[], nominalUm: number) =>
  offsetsUm.map((offset) => (nominalUm + offset) * um);

const offsets = fc.array(fc.integer({ min: 0, max: 24 }), { minLength: 1, maxLength: 5 });
const fit = { minPm: 5 * um, maxPm: 20 * um, aimPm: 12 * um };
const purposes: PairingPurpose[] = ['closest', 'closest-squares', 'worst-best', 'most-likely'];

/** Figures of every pairing of the most legal pairs, by brute force. */
function brute(boresPm: number[], shaftsPm: number[], uPm: number, forbidden: readonly Pair[]) {
  const clearance = ([b, s]: Pair) => boresPm[b]! - shaftsPm[s]!;
  const isForbidden = (b: number, s: number) => forbidden.some(([x, y]) => x === b && y === s);
  const legal = costMatrix(
    boresPm.map((bore, b) =>
      shaftsPm.map((shaft, s) => {
        const inside = bore - shaft >= fit.minPm && bore - shaft <= fit.maxPm;
        return inside && !isForbidden(b, s) ? 1 : null;
      }),
    ),
  );
  const all = allPairings(legal);
  const size = Math.max(...all.map((pairs) => pairs.length));
  return all
    .filter((pairs) => pairs.length === size)
    .map((pairs) => {
      const off = pairs.map((pair) => Math.abs(clearance(pair) - fit.aimPm));
      const chances = pairs.map((pair) =>
        probabilityBetween({
          value: clearance(pair),
          u: uPm,
          lower: fit.minPm,
          upper: fit.maxPm,
        }),
      );
      return {
        size,
        sum: off.reduce((total, one) => total + one, 0),
        squares: off.reduce((total, one) => total + (one / um) ** 2, 0),
        worst: Math.max(0, ...off),
        chance: chances.reduce((product, one) => product * one, 1),
      };
    });
}

describe('pairPieces', () => {
  it('is as good as the best of all pairings, for each purpose', () => {
    const question = fc.tuple(offsets, offsets, fc.array(fc.tuple(fc.nat(4), fc.nat(4))));
    fc.assert(
      fc.property(question, fc.constantFrom(...purposes), ([bores, shafts, pairs], purpose) => {
        const boresPm = sizes(bores, 20_012);
        const shaftsPm = sizes(shafts, 20_000);
        const forbidden = pairs.filter(([b, s]) => b < bores.length && s < shafts.length);
        const found = pairPieces({
          ...fit,
          boresPm,
          shaftsPm,
          forbidden,
          purpose,
          uBoresPm: boresPm.map(() => 3 * um),
          uShaftsPm: shaftsPm.map(() => 4 * um),
        });
        // 3 and 4 um combine to 5 um.
        const all = brute(boresPm, shaftsPm, 5 * um, forbidden);
        expect(found.pairs).toHaveLength(all[0]!.size);
        expect(found.complete).toBe(all[0]!.size === Math.min(bores.length, shafts.length));
        expect(found.unpairedBores).toHaveLength(bores.length - all[0]!.size);
        expect(found.unpairedShafts).toHaveLength(shafts.length - all[0]!.size);
        const best = (figure: 'sum' | 'squares' | 'worst') =>
          Math.min(...all.map((one) => one[figure]));
        if (purpose === 'closest') expect(found.sumOffPm).toBe(best('sum'));
        if (purpose === 'closest-squares') {
          // Squares of whole micrometres are whole: exact.
          expect(found.sumOffSquaredUm2).toBe(best('squares'));
        }
        if (purpose === 'worst-best') {
          expect(found.worstOffPm).toBe(best('worst'));
          const tied = all.filter((one) => one.worst === best('worst'));
          expect(found.sumOffPm).toBe(Math.min(...tied.map((one) => one.sum)));
        }
        if (purpose === 'most-likely') {
          const chance = Math.max(...all.map((one) => one.chance));
          // Products of at most five doubles; ties may multiply in another order.
          expect(Math.abs(found.probabilityAllInside! - chance)).toBeLessThan(1e-12);
        } else {
          expect(found.probabilityAllInside).toBeUndefined();
        }
      }),
      { numRuns: 300 },
    );
  });

  it('leaves the sorted order where pieces known less well are better off in the middle', () => {
    // Limits 5 and 20 um. Whichever bore is known badly is better off near 12.5 with shaft 1, while
    // the one known well is safe at 6 or 7 with shaft 0.
    const boresPm = sizes([0, 1], 20_012);
    const shaftsPm = sizes([6, 0], 20_000);
    const question = { ...fit, boresPm, shaftsPm, purpose: 'most-likely' as const };
    const [well, badly] = [0.2 * um, 5 * um];
    const uShaftsPm = [0, 0];
    const chance = (clearance: number, u: number) =>
      probabilityBetween({ value: clearance * um, u, lower: fit.minPm, upper: fit.maxPm });
    // Bore 0 with shaft 0 is 6, with shaft 1 is 12; bore 1 makes 7 and 13.
    const found = pairPieces({ ...question, uBoresPm: [badly, well], uShaftsPm });
    const wanted = Math.max(
      chance(6, badly) * chance(13, well),
      chance(12, badly) * chance(7, well),
    );
    expectNear(found.probabilityAllInside!, wanted, { rel: 1e-14 });
    const other = pairPieces({ ...question, uBoresPm: [well, badly], uShaftsPm });
    const otherWanted = Math.max(
      chance(6, well) * chance(13, badly),
      chance(12, well) * chance(7, badly),
    );
    expectNear(other.probabilityAllInside!, otherWanted, { rel: 1e-14 });
    // One of the two leaves the order of sizes.
    expect(found.pairs.map(({ shaft }) => shaft)).not.toEqual(
      other.pairs.map(({ shaft }) => shaft),
    );
  });

  const four = {
    boresPm: sizes([31, 18, 26, 40], 20_000),
    shaftsPm: sizes([-10, -1, 8, -16], 20_000),
    minPm: 10 * um,
    maxPm: 60 * um,
    aimPm: 30 * um,
    purpose: 'closest-squares',
  } as const;
  const named = (found: ReturnType<typeof pairPieces>) =>
    found.pairs.map(({ bore, shaft }) => [bore, shaft]);

  it('keeps a locked pair and lets the rest have the best that is left', () => {
    // By hand: bore 0 with shaft 2 (23) leaves 28, 19, 34 / 36, 27, 42 / 50, 41, 56 to shafts 0, 1, 3;
    // 34, 36, 41 is the only choice with squares 16 + 36 + 121 = 173, and 49 for the lock makes 222.
    const found = pairPieces({ ...four, locked: [[0, 2]] });
    expect(named(found)).toEqual([
      [0, 2],
      [1, 3],
      [2, 0],
      [3, 1],
    ]);
    expect(found.sumOffSquaredUm2).toBe(222);
    expect(found.pairs[0]).toEqual({
      bore: 0,
      shaft: 2,
      clearancePm: 23 * um,
      locked: true,
      inside: true,
    });
    expect(found.pairs[1]!.locked).toBe(false);
  });

  it('keeps a locked pair outside the limits and says that the set is not complete', () => {
    const found = pairPieces({ ...four, maxPm: 50 * um, locked: [[3, 3]] });
    expect(found.pairs[3]).toMatchObject({
      bore: 3,
      shaft: 3,
      clearancePm: 56 * um,
      inside: false,
    });
    expect(found.complete).toBe(false);
    expect(found.pairs).toHaveLength(4);
  });

  it('lets pieces that are left out take no part', () => {
    const found = pairPieces({ ...four, leftOut: { bores: [1], shafts: [0] } });
    expect(named(found).flatMap(([bore]) => bore)).not.toContain(1);
    expect(named(found).map(([, shaft]) => shaft)).not.toContain(0);
    expect(found.complete).toBe(true);
    expect([found.unpairedBores, found.unpairedShafts]).toEqual([[], []]);
  });

  it('makes no pairs when everything on one side is left out or locked', () => {
    const found = pairPieces({ ...four, leftOut: { bores: [0, 1, 2, 3] } });
    expect(found.pairs).toEqual([]);
    expect(found.unpairedShafts).toEqual([0, 1, 2, 3]);
    expect(found.complete).toBe(true);
  });

  it('does not pair what is forbidden', () => {
    const free = named(pairPieces(four));
    const forbidden = free.map(([bore, shaft]): Pair => [bore!, shaft!]);
    const found = named(pairPieces({ ...four, forbidden }));
    expect(found).toHaveLength(4);
    for (const pair of found) expect(free).not.toContainEqual(pair);
  });

  it('takes limits as inside', () => {
    const two = { boresPm: [20_010 * um], shaftsPm: [20_000 * um], aimPm: 12 * um } as const;
    const at = (minPm: number, maxPm: number) =>
      pairPieces({ ...two, minPm, maxPm, purpose: 'closest' }).complete;
    expect(at(10 * um, 20 * um)).toBe(true);
    expect(at(10 * um + 1, 20 * um)).toBe(false);
    expect(
      pairPieces({ ...two, aimPm: 0, minPm: 0, maxPm: 10 * um, purpose: 'closest' }).complete,
    ).toBe(true);
  });

  it('takes an aim that stands on a limit', () => {
    const { complete } = pairPieces({ ...four, aimPm: four.minPm });
    expect(complete).toBe(true);
    expect(pairPieces({ ...four, aimPm: four.maxPm }).complete).toBe(true);
  });

  it('pairs a thousand with a thousand in sorted order', () => {
    // A fixed sequence of sizes; the sorted order is the answer for one size each and a convex cost.
    const many = (factor: number) =>
      Array.from({ length: 1000 }, (_, i) => 20_000 * um + ((i * factor) % 30_011) * 1000);
    const boresPm = many(7919).map((size) => size + 12 * um);
    const shaftsPm = many(104_729);
    const limits = { minPm: -40 * um, maxPm: 60 * um, aimPm: 12 * um };
    const found = pairPieces({ ...limits, boresPm, shaftsPm, purpose: 'closest' });
    const order = (values: number[]) => values.toSorted((a, b) => a - b);
    const [b, s] = [order(boresPm), order(shaftsPm)];
    const wanted = b.reduce((total, bore, k) => total + Math.abs(bore - s[k]! - limits.aimPm), 0);
    expect(found.sumOffPm).toBe(wanted);
  });

  it('is as good as a search that knows of no sizes, where sorted pairs are forbidden', () => {
    const thirty = fc.array(fc.integer({ min: 0, max: 24 }), { minLength: 30, maxLength: 30 });
    const barred = fc.uniqueArray(fc.nat(29), { minLength: 1, maxLength: 30 });
    fc.assert(
      fc.property(thirty, thirty, barred, fc.boolean(), (bores, shafts, ranks, isTight) => {
        const [boresPm, shaftsPm] = [sizes(bores, 20_012), sizes(shafts, 20_000)];
        const order = (values: number[]) =>
          [...values.keys()].sort((a, b) => values[a]! - values[b]! || a - b);
        const [b, s] = [order(boresPm), order(shaftsPm)];
        const forbidden = ranks.map((k): Pair => [b[k]!, s[k]!]);
        const limits = isTight ? fit : { ...fit, minPm: -40 * um, maxPm: 60 * um };
        const found = pairPieces({ ...limits, boresPm, shaftsPm, forbidden, purpose: 'closest' });
        const isLegal = (bore: number, shaft: number) =>
          boresPm[bore]! - shaftsPm[shaft]! >= limits.minPm &&
          boresPm[bore]! - shaftsPm[shaft]! <= limits.maxPm &&
          !forbidden.some((pair) => pair[0] === bore && pair[1] === shaft);
        const matrix = costMatrix(
          boresPm.map((bore, r) =>
            shaftsPm.map((shaft, c) =>
              isLegal(r, c) ? Math.abs(bore - shaft - limits.aimPm) : null,
            ),
          ),
        );
        const wanted = leastTotal(matrix);
        expect(found.sumOffPm).toBe(wanted.total);
        expect(found.complete).toBe(wanted.complete);
        for (const { bore, shaft } of found.pairs) expect(isLegal(bore, shaft)).toBe(true);
      }),
      { numRuns: 50 },
    );
  });

  it.each([
    ['pair-pieces/sizes', { boresPm: [] }],
    ['pair-pieces/sizes', { shaftsPm: [20.1] }],
    ['pair-pieces/sizes', { shaftsPm: [0] }],
    ['pair-pieces/clearances', { aimPm: 61 * um }],
    ['pair-pieces/clearances', { minPm: 60 * um, aimPm: 60 * um }],
    ['pair-pieces/clearances', { aimPm: 20.5 }],
    ['pair-pieces/piece', { leftOut: { bores: [4] } }],
    ['pair-pieces/piece', { leftOut: { shafts: [1, 1] } }],
    ['pair-pieces/piece', { locked: [[0, 0]] as Pair[], leftOut: { bores: [0] } }],
    ['pair-pieces/piece', { locked: [[0, 9]] as Pair[] }],
    ['pair-pieces/piece', { forbidden: [[9, 0]] as Pair[] }],
    ['pair-pieces/piece', { forbidden: [[0, 0]] as Pair[], locked: [[0, 0]] as Pair[] }],
    ['pair-pieces/uncertainty', { purpose: 'most-likely' as const }],
    [
      'pair-pieces/uncertainty',
      { purpose: 'most-likely' as const, uBoresPm: [1, 1, 1, -1], uShaftsPm: [1, 1, 1, 1] },
    ],
  ])('refuses by %s', (code, part) => {
    expect(() => pairPieces({ ...four, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
