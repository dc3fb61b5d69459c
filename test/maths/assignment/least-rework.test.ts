import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { costMatrix } from '@/lib/maths/assignment/cost-matrix';
import { leastRework } from '@/lib/maths/assignment/least-rework';
import { pairPieces } from '@/lib/maths/assignment/pair-pieces';
import { allPairings } from './brute-force';

const um = 1_000_000;
const fit = { minPm: 5 * um, maxPm: 20 * um, aimPm: 12 * um };
const at = (offsetsUm: readonly number[]) => offsetsUm.map((offset) => (20_000 + offset) * um);

describe('leastRework', () => {
  it('asks for nothing where a full pairing is legal', () => {
    const found = leastRework({ ...fit, boresPm: at([10, 20]), shaftsPm: at([0, 8]) });
    expect(found).toMatchObject({ cuts: 0, remakes: 0, takeOffPm: 0 });
    expect(found!.pairs.map((pair) => pair.work)).toEqual(['none', 'none']);
  });

  it('takes down the shaft that is too large, to its aim', () => {
    // By hand: bores 10 and 12, shafts 0 and 8: either bore with shaft 8 leaves 2 or 4 um, under 5.
    // Cutting for bore 12 takes 12 - 4 = 8 um off, for bore 10 it takes 10: the first.
    const found = leastRework({ ...fit, boresPm: at([10, 12]), shaftsPm: at([0, 8]) });
    expect(found).toMatchObject({ cuts: 1, remakes: 0, takeOffPm: 8 * um });
    expect(found!.pairs).toEqual([
      { bore: 0, shaft: 0, clearancePm: 10 * um, work: 'none' },
      {
        bore: 1,
        shaft: 1,
        clearancePm: 4 * um,
        work: 'cut-shaft',
        toPm: 20_000 * um,
        takeOffPm: 8 * um,
      },
    ]);
  });

  it('opens the bore where the shaft may not be cut', () => {
    const found = leastRework({
      ...fit,
      boresPm: at([4]),
      shaftsPm: at([0]),
      uncuttable: { shafts: [0] },
    });
    expect(found!.pairs[0]).toMatchObject({
      work: 'cut-bore',
      toPm: 20_012 * um,
      takeOffPm: 8 * um,
    });
  });

  it('asks for a new piece where neither may be cut, and where the pair is too slack', () => {
    const tight = { ...fit, boresPm: at([4]), shaftsPm: at([0]) };
    const uncuttable = { bores: [0], shafts: [0] };
    expect(leastRework({ ...tight, uncuttable })!.pairs[0]).toMatchObject({
      work: 'remake-shaft',
      toPm: 19_992 * um,
    });
    const slack = { ...fit, boresPm: at([30]), shaftsPm: at([0]) };
    expect(leastRework(slack)).toMatchObject({ cuts: 0, remakes: 1, takeOffPm: 0 });
    expect(leastRework(slack)!.pairs[0]).toMatchObject({
      work: 'remake-shaft',
      toPm: 20_018 * um,
    });
    expect(leastRework({ ...slack, remake: 'bore' })!.pairs[0]).toMatchObject({
      work: 'remake-bore',
      toPm: 20_012 * um,
    });
  });

  it('sends a piece that is too small to where it needs no growing', () => {
    // Bore 30 fits only shaft 12 (18); shaft 0 with bore 10 (10) is fine: nothing to do, although
    // the pairing by the order of the marks would need a new shaft.
    const found = leastRework({ ...fit, boresPm: at([30, 10]), shaftsPm: at([0, 12]) });
    expect(found).toMatchObject({ cuts: 0, remakes: 0 });
  });

  it('reworks a locked pair like any other and keeps it together', () => {
    const found = leastRework({
      ...fit,
      boresPm: at([4, 12]),
      shaftsPm: at([0, 0]),
      locked: [[0, 1]],
    });
    expect(found!.pairs[0]).toMatchObject({ bore: 0, shaft: 1, work: 'cut-shaft' });
    expect(found!.pairs[1]).toMatchObject({ bore: 1, shaft: 0, work: 'none' });
  });

  it('answers undefined when forbidden pairs leave no complete pairing', () => {
    const question = { ...fit, boresPm: at([10, 12]), shaftsPm: at([0, 1]) };
    const forbidden = [[0, 0] as const, [0, 1] as const];
    expect(leastRework({ ...question, forbidden })).toBeUndefined();
  });

  it('has no pairs where one side is left out', () => {
    const question = { ...fit, boresPm: at([10]), shaftsPm: at([0]) };
    expect(leastRework({ ...question, leftOut: { shafts: [0] } })!.pairs).toEqual([]);
  });

  const offsets = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 5 });

  it('never lets metal grow, and leaves every pair inside the limits', () => {
    fc.assert(
      fc.property(offsets, offsets, (bores, shafts) => {
        const [boresPm, shaftsPm] = [at(bores), at(shafts)];
        const found = leastRework({ ...fit, boresPm, shaftsPm })!;
        expect(found.pairs).toHaveLength(Math.min(bores.length, shafts.length));
        for (const pair of found.pairs) {
          let [borePm, shaftPm] = [boresPm[pair.bore]!, shaftsPm[pair.shaft]!];
          if (pair.work === 'cut-shaft') {
            expect(pair.toPm).toBeLessThan(shaftPm);
            expect(shaftPm - pair.toPm).toBe(pair.takeOffPm);
          }
          if (pair.work === 'cut-bore') expect(pair.toPm).toBeGreaterThan(borePm);
          if (pair.work.endsWith('-shaft') && 'toPm' in pair) shaftPm = pair.toPm;
          if (pair.work.endsWith('-bore') && 'toPm' in pair) borePm = pair.toPm;
          expect(borePm - shaftPm).toBeGreaterThanOrEqual(fit.minPm);
          expect(borePm - shaftPm).toBeLessThanOrEqual(fit.maxPm);
        }
        const legal = pairPieces({ ...fit, boresPm, shaftsPm, purpose: 'closest' });
        const untouched = found.pairs.filter((pair) => pair.work === 'none').length;
        expect(untouched).toBeLessThanOrEqual(legal.pairs.length);
        if (legal.complete) expect([found.cuts, found.remakes]).toEqual([0, 0]);
      }),
      { numRuns: 200 },
    );
  });

  it('is the least of all complete pairings: new pieces, then cuts, then metal, then distance', () => {
    fc.assert(
      fc.property(offsets, offsets, (bores, shafts) => {
        const [boresPm, shaftsPm] = [at(bores), at(shafts)];
        const found = leastRework({ ...fit, boresPm, shaftsPm })!;
        const figures = (pairs: readonly (readonly [number, number])[]) => {
          const clearances = pairs.map(([b, s]) => boresPm[b]! - shaftsPm[s]!);
          const slack = clearances.filter((c) => c > fit.maxPm);
          const tight = clearances.filter((c) => c < fit.minPm);
          const good = clearances.filter((c) => c >= fit.minPm && c <= fit.maxPm);
          const total = (values: number[]) =>
            values.reduce((sum, c) => sum + Math.abs(c - fit.aimPm), 0);
          return [slack.length, tight.length, total(tight), total(good)];
        };
        const everyPair = costMatrix(bores.map(() => shafts.map(() => 1)));
        const complete = allPairings(everyPair).filter(
          (pairs) => pairs.length === Math.min(bores.length, shafts.length),
        );
        const best = complete
          .map(figures)
          .reduce((least, one) => (comesBefore(one, least) ? one : least));
        expect(figures(found.pairs.map(({ bore, shaft }) => [bore, shaft]))).toEqual(best);
        expect([found.remakes, found.cuts, found.takeOffPm]).toEqual(best.slice(0, 3));
      }),
      { numRuns: 150 },
    );
  });

  it.each([
    ['least-rework/sizes', { boresPm: [] }],
    ['least-rework/clearances', { aimPm: 0 }],
    ['least-rework/piece', { leftOut: { bores: [2] } }],
    ['least-rework/piece', { uncuttable: { shafts: [2] } }],
    ['least-rework/piece', { uncuttable: { bores: [-1] } }],
  ])('refuses by %s', (code, part) => {
    const good = { ...fit, boresPm: at([10]), shaftsPm: at([0]) };
    expect(() => leastRework({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});

function comesBefore(a: readonly number[], b: readonly number[]): boolean {
  const k = a.findIndex((value, i) => value !== b[i]);
  return k >= 0 && a[k]! < b[k]!;
}
