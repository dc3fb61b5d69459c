import { describe, expect, it } from 'vitest';
import { cutSteps } from '@/lib/rules/cuts/cut-steps';
import { standing, type Standing } from '@/lib/rules/standing';
import type { Cut } from '@/lib/schema/fit';
import type { Correction, Reading } from '@/lib/schema/reading';
import { correctionOf, mm, readingOf, um } from '../make';
import { aCut } from './a-cut';

// Constructed logs; what was asked and got follows from FORMULAS section 31: got = before - after (a shaft).

/** Reading number, and micrometres from 18 mm. */
type Read = [n: number, microns: number];

function stepsOf(
  reads: readonly Read[],
  cuts: readonly Cut[],
  more: { corrections?: Correction[]; side?: 'external' | 'internal' } = {},
) {
  const readings: Reading[] = reads.map(([n, microns]) =>
    readingOf(n, { valuePm: 18 * mm + microns * um }),
  );
  const all = standing(readings, more.corrections ?? []);
  const last = Math.max(0, ...cuts.map(({ ordinal }) => ordinal * 10));
  return cutSteps({
    cell: {
      earlier: all.filter(({ seq }) => seq <= last),
      readings: all.filter(({ seq }) => seq > last),
    },
    cuts,
    pieceId: 'piece',
    featureId: 'feature',
    side: more.side ?? 'external',
    seqOf: (id) => readings.find((reading) => reading.id === id)?.seq,
    sizeOf: (list: readonly Standing[]) =>
      list.length === 0 ? null : Math.max(...list.map(({ valuePm }) => valuePm)),
  });
}

const micronsOf = (pm: number | null) => (pm === null ? null : Math.round(pm / um));

describe('cutSteps', () => {
  it('says what was asked, what came off and what is left, from the readings between the cuts', () => {
    const steps = stepsOf(
      [
        [10, 590],
        [20, 405],
        [30, 217],
        [31, 86],
      ],
      [aCut(1), aCut(2), aCut(3, { askedPm: 140 * um })],
    );
    // The log of look.md's picture: 0.200 -> 0.185, 0.200 -> 0.188, 0.140 -> 0.131.
    expect(
      steps.map(({ number, askedPm, gotPm, afterPm }) => [
        number,
        micronsOf(askedPm),
        micronsOf(gotPm),
        micronsOf(afterPm! - 18 * mm),
      ]),
    ).toEqual([
      [1, 200, 185, 405],
      [2, 200, 188, 217],
      [3, 140, 131, 86],
    ]);
    expect(steps.map(({ ratio }) => ratio!.toFixed(3))).toEqual(['0.925', '0.940', '0.936']);
  });

  it('counts what came out of a bore the other way about', () => {
    const [step] = stepsOf(
      [
        [10, 0],
        [11, 46],
      ],
      [aCut(1, { askedPm: 50 * um })],
      {
        side: 'internal',
      },
    );
    expect([micronsOf(step!.gotPm), step!.ratio]).toEqual([46, 0.92]);
  });

  it('does not know what came off until it is measured', () => {
    const steps = stepsOf([[10, 100]], [aCut(1)]);
    expect(steps[0]).toMatchObject({
      beforePm: 18 * mm + 100 * um,
      afterPm: null,
      gotPm: null,
      ratio: null,
    });
  });

  it('does not tell two cuts apart that were not measured between', () => {
    const steps = stepsOf(
      [
        [10, 500],
        [21, 120],
      ],
      [aCut(1), aCut(2, { lastReadingId: 'reading 10' })],
    );
    expect(
      steps.map(({ gotPm, beforePm, afterPm }) => [gotPm, beforePm !== null, afterPm !== null]),
    ).toEqual([
      [null, true, false],
      [null, false, true],
    ]);
  });

  it('changes with a reading that is struck out', () => {
    const reads: Read[] = [
      [10, 300],
      [11, 117],
      [12, 116],
    ];
    const cuts = [aCut(1)];
    expect(micronsOf(stepsOf(reads, cuts)[0]!.gotPm)).toBe(183);
    const struck = stepsOf(reads, cuts, { corrections: [correctionOf(11, { kind: 'void' })] });
    expect(micronsOf(struck[0]!.gotPm)).toBe(184);
  });

  it('takes what another program said of a cut where there are no readings', () => {
    const cut = aCut(1, { lastReadingId: null, beforePm: 19 * mm, afterPm: 18 * mm + 810 * um });
    expect(stepsOf([], [cut])[0]).toMatchObject({ gotPm: 190 * um, ratio: 0.95 });
  });

  it.each([
    ['a spring pass', { spring: true, askedPm: 0 }, 'spring', null],
    ['a cut nobody said the asking of', { askedPm: 0 }, 'unsaid', null],
    ['a sleeve', { spring: true, askedPm: 0, changed: 'sleeve' }, 'sleeve', null],
    ['a cut', {}, 'cut', 0.4],
  ] as const)('calls %s by its name, and gives a ratio to a cut only', (_, over, kind, ratio) => {
    const [step] = stepsOf(
      [
        [10, 100],
        [11, 20],
      ],
      [aCut(1, over)],
    );
    expect([step!.kind, step!.ratio]).toEqual([kind, ratio]);
    expect(step!.gotPm).toBe(kind === 'sleeve' ? null : 80 * um);
  });

  it.each([
    ['something was said to be changed', { changed: 'insert' }, true],
    ['it went on another dial', { dial: 'diameter' }, true],
    ['the division is another', { divisionPm: 20 * um }, true],
    ['the top slide was set over', { fineFeed: 10 }, true],
    ['the tool is another', { tool: 'boring bar' }, true],
    ['nothing changed', {}, false],
  ] as const)('begins afresh where %s', (_, over, afresh) => {
    const steps = stepsOf(
      [
        [10, 300],
        [20, 200],
      ],
      [aCut(1), aCut(2, over)],
    );
    expect(steps.map((step) => step.afresh)).toEqual([false, afresh]);
  });

  it.each<[string, Partial<Cut>, Partial<Cut>, boolean[]]>([
    ['another machine, after a cut that says nothing', { dial: null, askedPm: 0 }, { tool: 'B' }, [false, true]],
    ['another machine, after its spring pass', { spring: true, askedPm: 0, tool: 'B' }, { tool: 'B' }, [false, true]],
    ['the same machine, after a cut that says nothing', { dial: null, askedPm: 0 }, { tool: 'A' }, [false, false]],
    ['the same machine, after a cut asked for on nobody says what', { dial: null }, { tool: 'A' }, [true, false]],
    ['a machine without a name', { tool: 'A' }, {}, [false, true]],
  ])('is held against the last cut that says what it was put on with: %s', (_, second, third, afresh) => {
    const reads: Read[] = [
      [10, 300],
      [20, 200],
      [30, 150],
    ];
    const steps = stepsOf(reads, [aCut(1, { tool: 'A' }), aCut(2, second), aCut(3, third)]);
    expect(steps.map((step) => step.afresh)).toEqual([false, ...afresh]);
  }); // prettier-ignore

  it('leaves out cuts that were struck out, of another piece, or of another feature', () => {
    const steps = stepsOf(
      [[10, 300]],
      [
        aCut(1, { struckAt: '2026-03-14T11:00:00Z' }),
        aCut(2, { pieceId: 'other' }),
        aCut(3, { featureId: 'other' }),
        aCut(4, { lastReadingId: 'reading 10' }),
      ],
    );
    expect(steps.map(({ number, cut }) => [number, cut.id])).toEqual([[1, 'cut 4']]);
  });
});
