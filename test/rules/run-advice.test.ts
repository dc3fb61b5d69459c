import { describe, expect, it } from 'vitest';
import { capabilityView } from '@/lib/rules/capability-view';
import { lastPiece } from '@/lib/rules/last-piece';
import { nextMeasure } from '@/lib/rules/next-measure';
import { offsetEffect } from '@/lib/rules/offset-effect';
import { runDoubts } from '@/lib/rules/run-doubts';
import { steadyOffset } from '@/lib/rules/steady-offset';
import { jobView } from '@/lib/rules/job-view';
import { seededDraws } from '@/test/measure/seeded-draws';
import { um } from './make';
import { smallRun, smallRunSheet, wander } from './small-run';

// Limits -27 and 0 from 12 mm, a radius dial of 0.010 unless said, each size known to about 0.9 um.
const fine = { divisionPm: um / 10 };

describe('a steady run', () => {
  it('is left alone where three scatters and the guard stay clear of both limits', () => {
    expect(steadyOffset(smallRun({ sizes: wander(12, 1, -13.5), run: fine }))).toBeNull();
    expect(steadyOffset(smallRun({ sizes: wander(12, 1, -8), run: fine }))).toBeNull();
  });

  it('is moved to the middle where they do not, in whole divisions and never past it', () => {
    const offset = steadyOffset(smallRun({ sizes: wander(12, 1, -3), run: fine }))!;
    expect(offset.side).toBe('top');
    expect(offset.onDiameterPm / um).toBeCloseTo(-10.5, 0);
    expect(offset.onDiameterPm).toBe(2 * offset.onDialPm);
    expect(offset.onDialPm % fine.divisionPm).toBe(-0);
    expect(offset.thenPm / um - 12_000).toBeCloseTo(-13.5, 0);
    const coarse = steadyOffset(smallRun({ sizes: wander(12, 1, -3) }));
    expect(coarse).toBeNull(); // 10.5 on diameter is half a division of the radius dial
  });

  it('is moved by its mean and not by its last piece', () => {
    const sizes = wander(12, 1, -3);
    const [a, b] = [sizes[10]!, sizes[11]!];
    const swapped = [...sizes.slice(0, 10), b, a];
    const [one, other] = [sizes, swapped].map((list) =>
      steadyOffset(smallRun({ sizes: list, run: fine })),
    );
    expect(one!.onDiameterPm).toBe(other!.onDiameterPm);
  });

  it('on a diameter dial puts in the whole of it', () => {
    const offset = steadyOffset(
      smallRun({ sizes: wander(12, 1, -24), run: { ...fine, dial: 'diameter' } }),
    )!;
    expect(offset.side).toBe('bottom');
    expect(offset.onDialPm).toBe(offset.onDiameterPm);
    expect(offset.onDiameterPm).toBeGreaterThan(0);
  });

  it('that drifts, or has too few pieces, is not asked', () => {
    expect(steadyOffset(smallRun({ sizes: [-9, -8, -7], run: fine }))).toBeNull();
    const growing = wander(12, 0.4).map((off, i) => -20 + i + off);
    expect(steadyOffset(smallRun({ sizes: growing, run: fine }))).toBeNull();
  });
});

describe('the last piece', () => {
  const line = wander(12, 0.5).map((off, i) => -20 + i + off);

  it('within the band of the others is noise', () => {
    expect(lastPiece(smallRun({ sizes: line }))).toMatchObject({ mark: 'W12', within: true });
  });

  it('off it is told with how far, against the line and not the piece before', () => {
    const found = lastPiece(smallRun({ sizes: [...line.slice(0, 11), line[10]! - 6] }))!;
    expect(found.within).toBe(false);
    expect(found.offPm / um).toBeLessThan(-5.5);
  });

  it('of sizes too alike for a line is not judged against one', () => {
    const coarse = [0, -10, 0, 0, -10, 0, 0, 0];
    expect(smallRun({ sizes: coarse }).drift).toMatchObject({ reason: 'too-few-sizes' });
    expect(lastPiece(smallRun({ sizes: coarse }))).toBeNull();
  });

  it('of five is not judged', () => {
    expect(lastPiece(smallRun({ sizes: line.slice(0, 5) }))).toBeNull();
  });
});

describe('the next piece to measure', () => {
  it('is the very next while there are too few for a line', () => {
    expect(nextMeasure(smallRun({ sizes: [], of: 9 }))).toMatchObject({ place: { mark: 'W1' } });
    expect(nextMeasure(smallRun({ sizes: [-9, -8], of: 9 }))).toMatchObject({
      because: 'few',
      every: 1,
      place: { mark: 'W3' },
    });
  });

  it('comes six times before the drift meets its limit', () => {
    const slow = wander(10, 0.2).map((off, i) => -26 + 0.4 * i + off);
    const run = smallRun({ sizes: slow, of: 90 });
    const found = nextMeasure(run)!;
    expect(found.because).toBe('drift');
    expect(found.every).toBe(Math.floor(run.piecesLeft! / 6));
    expect(found.every).toBeGreaterThan(1);
    expect(found.place.ordinal).toBe(10 + found.every);
  });

  it('comes six times between adjustments where a steady run has two of them', () => {
    const events = [18, 42].map((afterOrdinal) => ({
      kind: 'insert changed' as const,
      afterOrdinal,
    }));
    const run = smallRun({ sizes: wander(50, 1, -13), of: 60, events });
    expect(nextMeasure(run)).toMatchObject({ because: 'events', every: 4, place: { mark: 'W54' } });
  });

  it('comes less often the longer a steady run has kept by itself', () => {
    const steady = (pieces: number, after: number[] = []) =>
      nextMeasure(
        smallRun({
          sizes: wander(pieces, 1, -13),
          of: 200,
          events: after.map((afterOrdinal) => ({ kind: 'insert changed' as const, afterOrdinal })),
        }),
      );
    expect(steady(11)).toMatchObject({ because: 'unknown', every: 1 });
    expect(steady(12)).toMatchObject({ because: 'steady', every: 2 });
    expect(steady(60)).toMatchObject({ because: 'steady', every: 10 });
    expect(steady(50, [18])).toMatchObject({ because: 'steady', every: 5 });
    // 24 from one to the next, and 60 since that have kept: at least (24 + 60) / 2.
    expect(steady(102, [18, 42])).toMatchObject({ because: 'events', every: 7 });
    // 13 since the last, fewer than the 24 before it: how long these keep is not known yet.
    expect(steady(55, [18, 42])).toMatchObject({ because: 'events', every: 4 });
  });

  it('is the last of the batch at the latest, and none after it', () => {
    const slow = wander(10, 0.2).map((off, i) => -26 + 0.4 * i + off);
    expect(nextMeasure(smallRun({ sizes: slow, of: 12 }))).toMatchObject({
      place: { mark: 'W12' },
    });
    expect(nextMeasure(smallRun({ sizes: slow }))).toBeNull();
  });
});

describe('an offset followed to its effect', () => {
  const growing = wander(10, 0.3).map((off, i) => -14 + i + off);
  const events = [{ kind: 'offset moved', afterOrdinal: 10, offsetPm: -20 * um } as const];

  it('is expected from the line before it, moved, and not from the last piece', () => {
    // The line stands at -4 at the eleventh piece; the last piece itself at -3.4.
    const found = offsetEffect(smallRun({ sizes: growing, events, of: 16 }))!;
    expect(found).toMatchObject({ mark: 'W11', askedPm: -20 * um, got: null });
    expect(found.expectedPm / um - 12_000).toBeCloseTo(-24, 0);
  });

  it('is as expected within the band, and is told by how much it moved', () => {
    const { got } = offsetEffect(smallRun({ sizes: [...growing, -24.2], events, of: 16 }))!;
    expect(got!.asExpected).toBe(true);
    expect(got!.movedPm / um).toBeCloseTo(-20, 0);
  });

  it('that came out at half of it is told so: the dial counts the radius', () => {
    const { got } = offsetEffect(smallRun({ sizes: [...growing, -14], events, of: 16 }))!;
    expect(got!.asExpected).toBe(false);
    expect(got!.movedPm / um).toBeCloseTo(-10, 0);
  });

  it('is the sum of what was put in between the same two measured pieces', () => {
    const twice = [-12, -8].map((by) => ({
      kind: 'offset moved' as const,
      afterOrdinal: 10,
      offsetPm: by * um,
    }));
    const found = offsetEffect(smallRun({ sizes: [...growing, -24.2], events: twice, of: 16 }))!;
    expect(found.askedPm).toBe(-20 * um);
    expect(found.got!.asExpected).toBe(true);
    // The second one after a piece nobody measured.
    const later = [twice[0]!, { ...twice[1]!, afterOrdinal: 11 }];
    const sizes = [...growing, null, -24.2];
    expect(offsetEffect(smallRun({ sizes, events: later, of: 16 }))!.askedPm).toBe(-20 * um);
  });

  it('says nothing where the insert was changed or the work re-chucked as well', () => {
    for (const kind of ['insert changed', 're-chucked'] as const) {
      const both = [...events, { kind, afterOrdinal: 10 }];
      const found = smallRun({ sizes: [...growing, -14], events: both, of: 16 });
      expect(offsetEffect(found)).toBeNull();
    }
    const paused = [...events, { kind: 'break' as const, afterOrdinal: 10 }];
    expect(offsetEffect(smallRun({ sizes: growing, events: paused, of: 16 }))).not.toBeNull();
  });

  it('goes by the line since the event before it alone, and is not undone by what came after its first piece', () => {
    const lower = wander(8, 0.3).map((off, i) => -26 + off + 0.1 * i);
    const stepped = [
      { kind: 'insert changed' as const, afterOrdinal: 8 },
      { ...events[0]!, afterOrdinal: 18 },
    ];
    const both = [...lower, ...growing];
    const found = offsetEffect(smallRun({ sizes: both, events: stepped, of: 30 }))!;
    // Growing from -14 after the new insert: -4 at its eleventh piece, less the twenty.
    expect(found.mark).toBe('W19');
    expect(found.expectedPm / um - 12_000).toBeCloseTo(-24, 0);
    const later = [...stepped, { kind: 'insert changed' as const, afterOrdinal: 19 }];
    const got = offsetEffect(smallRun({ sizes: [...both, -24], events: later, of: 30 }))!.got!;
    expect(got.asExpected).toBe(true);
  });

  it('has nothing to say without an amount, or without a line before it', () => {
    const none = [{ kind: 'offset moved', afterOrdinal: 10, offsetPm: null } as const];
    expect(offsetEffect(smallRun({ sizes: growing, events: none, of: 16 }))).toBeNull();
    const soon = [{ ...events[0]!, afterOrdinal: 3 }];
    expect(offsetEffect(smallRun({ sizes: growing, events: soon, of: 16 }))).toBeNull();
  });
});

describe('what a chart cannot be trusted for', () => {
  it('is nothing where sizes differ and the gauge is fine', () => {
    expect(runDoubts(smallRun({ sizes: wander(10, 2, -13) }))).toEqual([]);
  });

  it('is three or fewer different sizes in five pieces or more', () => {
    expect(runDoubts(smallRun({ sizes: [-9, -8, -9, -10] }))).toEqual([]);
    expect(runDoubts(smallRun({ sizes: [-9, -8, -9, -10, -8] }))).toEqual([
      { kind: 'few sizes', sizes: 3, pieces: 5 },
    ]);
    expect(runDoubts(smallRun({ sizes: [-9, -8, -9, -10, -11] }))).toEqual([]);
  });

  it('is a division of more than a tenth of the tolerance, and not of a tenth', () => {
    const sizes = wander(6, 2, -13);
    const gauge = (resolutionPm: number) => runDoubts(smallRun({ sizes, gauge: { resolutionPm } }));
    expect(gauge(2.7 * um)).toEqual([]);
    expect(gauge(2.8 * um)).toMatchObject([{ kind: 'coarse gauge', tolerancePm: 27 * um }]);
  });

  it('is features that do not scatter alike, a drift they share left out', () => {
    const sheet = smallRunSheet({
      sizes: wander(14, 0.5).map((off, i) => -20 + i + off),
      run: { alikeIds: ['second'] },
    });
    const first = sheet.features[0]!;
    const both = (scale: number) =>
      runDoubts(
        jobView({
          ...sheet,
          features: [first, { ...first, id: 'second', name: 'Pin', nominalPm: 8_000_000_000 }],
          readings: [
            ...sheet.readings,
            ...wander(14, scale).map((off, i) => ({
              ...sheet.readings[i]!,
              id: `second ${i}`,
              seq: 100 + i,
              featureId: 'second',
              valuePm: 8_000_000_000 + Math.round((off - 20 + i) * um),
            })),
          ],
        }).runs[0]!,
      );
    expect(both(0.6)).toEqual([]);
    const [doubt] = both(3);
    expect(doubt).toMatchObject({ kind: 'spreads differ', spreads: [{ name: 'Pin' }, {}] });
  });
});

describe('capability', () => {
  const steady = wander(40, 2, -13.5);

  it('is given with its limits of a steady run of thirty pieces and more', () => {
    const found = capabilityView(smallRun({ sizes: steady }));
    if (found.kind !== 'figures') throw new Error(found.reasons.join());
    const { cp, cpk } = found;
    expect(cp!.value).toBeCloseTo(27_000_000 / (6 * found.sigmaPm), 9);
    for (const { value, low, high } of [cp!, cpk]) {
      expect(low).toBeLessThan(value);
      expect(high).toBeGreaterThan(value);
    }
    expect(found.outside).toBeLessThan(0.01);
  });

  // Berthouex and Brown, Statistics for Environmental Engineers, table 21.1, 95 % confidence, 99 %: 3.22 for
  // forty, as read for test/reference/tolerance_intervals.json, whose exact figure is 3.215910.
  it('says between which sizes nearly all of such pieces lie, by the printed factor', () => {
    const found = capabilityView(smallRun({ sizes: steady }));
    if (found.kind !== 'figures') throw new Error(found.reasons.join());
    const { lowPm, highPm } = found.between;
    const factor = (highPm - lowPm) / 2 / found.sigmaPm;
    expect(Math.abs(factor - 3.22)).toBeLessThan(0.0051);
    expect(Math.abs(factor - 3.21591)).toBeLessThan(2e-5);
    expect((lowPm + highPm) / 2).toBeCloseTo(found.meanPm, 0);
    // Forty figures of `wander` about 13.5 below 12 mm: a size, and not what it is off by.
    expect(found.meanPm).toBeGreaterThan(11_980 * um);
    expect(lowPm).toBeLessThan(found.meanPm);
    expect(found).toMatchObject({ resolutionPm: um, fromNominal: false });
  });

  it('with one limit has only the one index', () => {
    const one = smallRun({ sizes: steady, feature: { lowerPm: null } });
    expect(capabilityView(one)).toMatchObject({ kind: 'figures', cp: null });
  });

  it.each<[string, Parameters<typeof smallRun>[0], string[]]>([
    ['few pieces', { sizes: steady.slice(0, 12) }, ['too few']],
    [
      'few pieces that drift, read with a coarse gauge',
      { sizes: wander(12, 0.5).map((o, i) => -24 + i + o), gauge: { resolutionPm: 3 * um } },
      ['too few', 'gauge too coarse'],
    ],
    ['four pieces', { sizes: steady.slice(0, 4) }, ['too few']],
    [
      'a drift',
      { sizes: wander(40, 0.5).map((o, i) => -24 + 0.5 * i + o) },
      ['drifting', 'not steady'],
    ],
    ['a jump', { sizes: steady.map((v, i) => (i === 20 ? v + 14 : v)) }, ['not steady']],
    ['a coarse gauge', { sizes: steady, gauge: { resolutionPm: 3 * um } }, ['gauge too coarse']],
    ['no spread at all', { sizes: steady.map(() => -13) }, ['no spread']],
    ['no limits', { sizes: steady, feature: { lowerPm: null, upperPm: null } }, ['no limits']],
    [
      'sizes in two heaps',
      { sizes: wander(40, 0.8).map((o, i) => o - 13 + (i % 2 === 0 ? 4 : -4)) },
      ['not normal'],
    ],
  ])('is refused of %s, with every reason', (_, small, reasons) => {
    expect(capabilityView(smallRun(small))).toMatchObject({ kind: 'none', reasons });
  });

  // Own simulation, 60 steady normal runs each, read to whole micrometres; the figure is a count of refusals.
  it.each([
    [30, 4.5],
    [100, 4.5],
    [300, 4.5],
    [100, 2.7],
  ])(
    'is given of most good runs of %i pieces, read to a tenth of the tolerance or finer',
    (pieces, sigma) => {
      const { normal } = seededDraws(pieces);
      const refused: Record<string, number> = {};
      const rounds = 60;
      for (let round = 0; round < rounds; round += 1) {
        const sizes = Array.from({ length: pieces }, () => Math.round(-13.5 + sigma * normal()));
        const found = capabilityView(smallRun({ sizes, gauge: { resolutionPm: um } }));
        if (found.kind === 'figures') continue;
        for (const reason of found.reasons) refused[reason] = (refused[reason] ?? 0) + 1;
      }
      // Each of the three is let to refuse one good run in twenty: 3 expected of each, 8 is 3 deviations off.
      for (const reason of ['drifting', 'not steady', 'not normal']) {
        expect(refused[reason] ?? 0).toBeLessThan(9);
      }
      expect(Object.keys(refused).every((reason) => reason !== 'gauge too coarse')).toBe(true);
    },
  );

  it('still refuses a piece far out of a long run', () => {
    const { normal } = seededDraws(3);
    const sizes = Array.from({ length: 300 }, () => Math.round(-13.5 + 3 * normal()));
    sizes[150] = -13 + 15;
    expect(capabilityView(smallRun({ sizes }))).toMatchObject({ kind: 'none' });
  });
});
