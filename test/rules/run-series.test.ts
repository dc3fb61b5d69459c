import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellKey, cellsOf } from '@/lib/rules/cells';
import { runSeries } from '@/lib/rules/run-series';
import type { Feature } from '@/lib/schema/feature';
import type { Cut } from '@/lib/schema/fit';
import type { Gauge } from '@/lib/schema/gauge';
import { correctionOf, mm, readingOf, um } from './make';

const gauges = [
  { id: 'mic', resolutionPm: um, uncertaintyPm: 300_000 },
  { id: 'caliper', resolutionPm: 10 * um, uncertaintyPm: 20 * um },
] as unknown as Gauge[];
const feature = {
  id: 'feature',
  kind: 'bore',
  nominalPm: 18 * mm,
  upperPm: 18 * um,
  lowerPm: 0,
} as unknown as Feature;
const pieces = Array.from({ length: 5 }, (_, i) => ({ id: `piece ${i + 1}`, ordinal: i + 1 }));

function seriesOf(
  readings: ReturnType<typeof readingOf>[],
  corrections: ReturnType<typeof correctionOf>[] = [],
  cutAfter: [string, string][] = [],
) {
  return runSeries({
    featureId: 'feature',
    pieces,
    readings,
    corrections,
    cutAfter: new Map(cutAfter),
    gauges: new Map(gauges.map((gauge) => [gauge.id, gauge])),
  });
}

describe('runSeries', () => {
  it('gives the measured pieces in the order made, and no row to the others', () => {
    const readings = [
      readingOf(1, { pieceId: 'piece 4', valuePm: 18 * mm + 4 * um }),
      readingOf(2, { pieceId: 'piece 2', valuePm: 18 * mm + 2 * um }),
      readingOf(3, { pieceId: 'piece 2', valuePm: 18 * mm + 3 * um }),
    ];
    expect(seriesOf(readings)).toEqual({
      ordinals: [2, 4],
      sizesPm: [18 * mm + 2.5 * um, 18 * mm + 4 * um],
    });
  });

  it('takes the finest gauge, and readings after the last cut', () => {
    const readings = [
      readingOf(1, { pieceId: 'piece 1', valuePm: 18 * mm + 90 * um }),
      readingOf(2, { pieceId: 'piece 1', valuePm: 18 * mm + 5 * um }),
      readingOf(3, { pieceId: 'piece 1', valuePm: 18 * mm + 40 * um, gaugeId: 'caliper' }),
    ];
    expect(seriesOf(readings, [], [['piece 1', 'reading 1']]).sizesPm).toEqual([18 * mm + 5 * um]);
  });

  it('hears corrections: struck, held, counted again, mistyped, moved', () => {
    const at = (n: number, over = {}) =>
      readingOf(n, { pieceId: `piece ${n}`, valuePm: 18 * mm + n * um, ...over });
    const readings = [at(1), at(2, { heldAs: 'far off' }), at(3, { heldAs: 'far off' }), at(4)];
    const corrections = [
      correctionOf(1, { kind: 'void' }),
      correctionOf(3, { kind: 'count' }),
      correctionOf(4, { kind: 'move', toPieceId: 'piece 5' }),
      correctionOf(4, { kind: 'mistyped', valuePm: 18 * mm + 9 * um, seq: 2000 }),
    ];
    expect(seriesOf(readings, corrections)).toEqual({
      ordinals: [3, 5],
      sizesPm: [18 * mm + 3 * um, 18 * mm + 9 * um],
    });
    const away = correctionOf(1, { kind: 'move', toFeatureId: 'another' });
    expect(seriesOf([at(1)], [away]).ordinals).toEqual([]);
  });

  it('gives the values that the cells of the job give, whatever was read and said', () => {
    const reading = fc.record({
      pieceId: fc.constantFrom(...pieces.map(({ id }) => id)),
      gaugeId: fc.constantFrom('mic', 'caliper'),
      valuePm: fc.integer({ min: 18 * mm, max: 18 * mm + 20 * um }),
      heldAs: fc.constantFrom(null, null, 'far off' as const),
    });
    const kind = fc.constantFrom('void', 'restore', 'count', 'move', 'mistyped');
    fc.assert(
      fc.property(
        fc.array(reading, { maxLength: 20 }),
        fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), kind), { maxLength: 8 }),
        fc.option(fc.integer({ min: 1, max: 20 })),
        (list, said, cutAt) => {
          const readings = list.map((over, i) => readingOf(i + 1, over));
          const corrections = said
            .filter(([n]) => n <= readings.length)
            .map(([n, one], i) =>
              correctionOf(n, {
                id: `c${i}`,
                seq: 1000 + i,
                kind: one as 'void',
                ...(one === 'move' ? { toPieceId: 'piece 3' } : {}),
                ...(one === 'mistyped' ? { valuePm: 18 * mm + 7 * um } : {}),
              }),
            );
          const before = cutAt === null ? undefined : readings[cutAt - 1];
          const cuts = before === undefined ? [] : [cutOf(before.pieceId, before.id)];
          const cells = cellsOf({ readings, corrections, gauges, features: [feature], cuts });
          const wanted = pieces.flatMap(({ id, ordinal }) => {
            const size = cells.byKey.get(cellKey(id, 'feature'))?.size ?? null;
            return size === null ? [] : [[ordinal, size.valuePm]];
          });
          const got = seriesOf(
            readings,
            corrections,
            cuts.map((cut) => [cut.pieceId, cut.lastReadingId!]),
          );
          expect(got.ordinals.map((ordinal, i) => [ordinal, got.sizesPm[i]])).toEqual(wanted);
        },
      ),
    );
  });
});

function cutOf(pieceId: string, lastReadingId: string): Cut {
  return {
    id: 'cut',
    struckAt: null,
    pieceId,
    featureId: 'feature',
    ordinal: 1,
    lastReadingId,
  } as unknown as Cut;
}
