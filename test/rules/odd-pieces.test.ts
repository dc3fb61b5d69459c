import { describe, expect, it } from 'vitest';
import { lineOutlierTest } from '@/lib/maths/control/line-outlier-test';
import { oddPieces } from '@/lib/rules/odd-pieces';
import { correctionOf, um } from './make';
import { smallRun, wander } from './small-run';

// Growing 0.7 a piece from -20, scatter 0.4, limits -27 and 0, each known to about 0.9.
const growing = wander(14, 0.4).map((off, i) => -20 + 0.7 * i + off);
const withOne = (at: number, off: number) => growing.map((v, i) => (i === at ? v + off : v));
const marks = (sizes: readonly number[], events: Parameters<typeof smallRun>[0]['events'] = []) =>
  oddPieces(smallRun({ sizes, events })).odd.map(({ point }) => point.mark);

describe('odd pieces', () => {
  it('are none in a run that drifts and scatters as it should', () => {
    expect(oddPieces(smallRun({ sizes: growing }))).toEqual({ odd: [], aside: [], drift: null });
  });

  it('stand against the line, not against the mean: one back where the run began is odd at its end', () => {
    expect(marks(withOne(11, -8))).toEqual(['W12']);
    const { odd } = oddPieces(smallRun({ sizes: withOne(11, -8) }));
    expect(odd[0]!.offPm / um).toBeCloseTo(-8, 0);
    expect((odd[0]!.point.valuePm - odd[0]!.offPm) / um).toBeCloseTo(odd[0]!.expectedPm / um, 6);
  });

  it('are found two at a time where one hides behind the other', () => {
    const two = withOne(3, 9).map((v, i) => (i === 9 ? v - 7 : v));
    expect(marks(two)).toEqual(['W4', 'W10']);
    // In the order made, whichever is found first.
    expect(marks(withOne(3, 7).map((v, i) => (i === 9 ? v - 9 : v)))).toEqual(['W4', 'W10']);
  });

  it('are looked for in each stretch by its own line', () => {
    const stepped = [...growing.slice(0, 8), ...growing.slice(0, 8)];
    expect(marks(stepped, [{ kind: 'insert changed', afterOrdinal: 8 }])).toEqual([]);
    const odd = stepped.map((v, i) => (i === 5 ? v + 10 : v));
    expect(marks(odd, [{ kind: 'insert changed', afterOrdinal: 8 }])).toEqual(['W6']);
  });

  it('are not called so within two divisions, however still the others stand', () => {
    // Every other piece on the line to 0.01; this one 0.6 off, read in whole micrometres.
    const still = Array.from({ length: 12 }, (_, i) => -20 + i + (i % 2 === 0 ? 0.01 : -0.01));
    expect(marks(still.map((v, i) => (i === 6 ? v + 0.6 : v)))).toEqual([]);
    expect(marks(still.map((v, i) => (i === 6 ? v + 6 : v)))).toEqual(['W7']);
  });

  it('are not called so for two divisions of the gauge, which roundings make', () => {
    // Known to 0.3, read in whole micrometres: one at two of them off the line, and one at three.
    const rounded = [-12, -11, -10, -9, -8, -7, -6, -5, -4, -3];
    const off = (by: number) =>
      oddPieces(
        smallRun({
          sizes: rounded.map((v, i) => v + (i === 3 ? by : i % 2 === 0 ? 0.01 : -0.01)),
          gauge: { resolutionPm: um, uncertaintyPm: 0.3 * um },
        }),
      ).odd.map(({ point }) => point.mark);
    expect(off(-1.9)).toEqual([]);
    expect(off(-3)).toEqual(['W4']);
  });

  it('are not called so for what one clean stretch in three shows: the test is at 1 in 20', () => {
    // 14 pieces: the bound is 2.576 at 5 % (Lund 1975, as printed in test/maths/control) and 2.03 at 50 %.
    const scattered = (off: number) =>
      wander(14, 2).map((v, i) => -18 + 0.7 * i + (i === 11 ? off : v));
    const studentized = (off: number) => {
      const sizes = scattered(off);
      const turns = sizes.map((_, i) => i + 1);
      return lineOutlierTest(turns, sizes, 0.05).studentized;
    };
    expect(studentized(-7)).toBeGreaterThan(2.1);
    expect(studentized(-7)).toBeLessThan(2.576);
    expect(marks(scattered(-7))).toEqual([]);
    expect(studentized(-9)).toBeGreaterThan(2.576);
    expect(marks(scattered(-9))).toEqual(['W12']);
  });

  it('are not looked for in fewer than six pieces, or where hardly any differ', () => {
    expect(marks([-9, -8, -7, 20, -5])).toEqual([]);
    expect(marks([-9, -9, -9, -9, -9, 20, -9])).toEqual([]);
  });

  it('never are more than a fifth of their stretch', () => {
    const wild = growing.slice(0, 10).map((v, i) => (i % 3 === 1 ? v + 30 + 5 * i : v));
    expect(marks(wild).length).toBeLessThanOrEqual(2);
  });

  it('show what the drift is with and without them', () => {
    const { drift } = oddPieces(smallRun({ sizes: withOne(13, -9) }));
    if (drift?.withAll.kind !== 'line' || drift.without.kind !== 'line') throw new Error('no line');
    expect(drift.without.slopeMmPerPiece * 1000).toBeCloseTo(0.7, 1);
    expect(drift.withAll.slopeMmPerPiece).toBeLessThan(0.8 * drift.without.slopeMmPerPiece);
    expect(drift.withAll.pieces - drift.without.pieces).toBe(1);
  });

  it('once set aside stay named, and the drift is shown with them too', () => {
    const run = smallRun({
      sizes: withOne(13, -9),
      corrections: () => [correctionOf(14, { kind: 'void', reason: 'swarf' })],
    });
    const { odd, aside, drift } = oddPieces(run);
    expect(odd).toEqual([]);
    expect(aside.map(({ mark, reason }) => `${mark} ${reason}`)).toEqual(['W14 swarf']);
    expect([drift!.withAll.pieces, drift!.without.pieces]).toEqual([14, 13]);
    expect(drift!.without).toMatchObject({ slopeMmPerPiece: expect.closeTo(0.0007, 4) as number });
  });

  it('are asked about once: said to be right, they are still named', () => {
    const run = smallRun({
      sizes: withOne(11, -8),
      corrections: () => [correctionOf(12, { kind: 'count', reason: 'measured twice' })],
    });
    expect(oddPieces(run).odd).toMatchObject([{ saidRight: true }]);
    expect(oddPieces(smallRun({ sizes: withOne(11, -8) })).odd).toMatchObject([
      { saidRight: false },
    ]);
    const back = smallRun({
      sizes: withOne(11, -8),
      corrections: () => [
        correctionOf(12, { kind: 'void', reason: 'swarf' }),
        correctionOf(12, { kind: 'restore', id: 'back', seq: 5000 }),
      ],
    });
    expect(oddPieces(back).odd).toMatchObject([{ saidRight: false }]);
  });
});
