import { describe, expect, it } from 'vitest';
import { alikeSeries } from '@/lib/rules/alike-series';
import { jobView } from '@/lib/rules/job-view';
import { um } from './make';
import { smallRun, smallRunSheet } from './small-run';

/** A second feature on the same piece, 8 mm with the same deviations, read after the first. */
function twoFeatures(second: readonly (number | null)[], over = {}) {
  const sheet = smallRunSheet({ sizes: [-10, -12, null], run: { alikeIds: ['second'] } });
  const first = sheet.features[0]!;
  const other = { ...first, id: 'second', name: 'Crank pin', nominalPm: 8_000_000_000, ...over };
  const readings = second.flatMap((microns, index) =>
    microns === null
      ? []
      : [
          {
            ...sheet.readings[0]!,
            id: `second ${index}`,
            seq: 100 + index,
            deviceSeq: 100 + index,
            featureId: 'second',
            pieceId: `piece ${index + 1}`,
            valuePm: 8_000_000_000 + microns * um,
          },
        ],
  );
  return {
    ...sheet,
    features: [first, other],
    readings: [...sheet.readings, ...readings],
  };
}

describe('the turns of a run', () => {
  it('of one feature are the ordinals of its pieces, measured or not', () => {
    const run = smallRun({ sizes: [-9, null, -7], of: 5 });
    expect(run.pieces.map(({ ordinal, mark }) => `${ordinal} ${mark}`)).toEqual([
      '1 W1',
      '2 W2',
      '3 W3',
      '4 W4',
      '5 W5',
    ]);
    expect(run.points.map(({ ordinal }) => ordinal)).toEqual([1, 3]);
    expect(run.nextPiece).toMatchObject({ ordinal: 4, mark: 'W4', id: 'piece 4' });
  });

  it('are in the order of the pieces, in whatever order the sheet has them', () => {
    const sheet = smallRunSheet({ sizes: [-9, -8, -7] });
    const run = jobView({ ...sheet, pieces: sheet.pieces.toReversed() }).runs[0]!;
    expect(run.pieces.map(({ mark }) => mark)).toEqual(['W1', 'W2', 'W3']);
    expect(run.points.map(({ ordinal }) => ordinal)).toEqual([1, 2, 3]);
  });

  it('of two features of a part take each piece in turn and keep the turn of what was not measured', () => {
    const run = jobView(twoFeatures([-3, null, -4])).runs[0]!;
    const name = run.feature.name.toLowerCase();
    expect(run.pieces.map(({ mark }) => mark).slice(0, 3)).toEqual([
      `W1 ${name}`,
      'W1 crank pin',
      `W2 ${name}`,
    ]);
    expect(run.points.map(({ ordinal, valuePm }) => [ordinal, valuePm / um])).toEqual([
      [1, -10],
      [2, -3],
      [3, -12],
      [6, -4],
    ]);
  });

  it('charts features alike from their own nominals, with the limits they share', () => {
    const run = jobView(twoFeatures([-3])).runs[0]!;
    expect(run.nominalPm).toBe(0);
    expect(run.limits).toEqual({ lowerPm: -27 * um, upperPm: 0 });
    expect(run.limitsDiffer).toBe(false);
  });

  it('draws no limits where the features have not the same', () => {
    const run = jobView(twoFeatures([-3], { upperPm: 5 * um })).runs[0]!;
    expect(run.limits).toEqual({ lowerPm: null, upperPm: null });
    expect(run.limitsDiffer).toBe(true);
    expect(run.piecesLeft).toBeNull();
  });

  it('of features of several parts go by the order of the book, what was not read yet coming after', () => {
    const sheet = twoFeatures([]);
    const [first, other] = sheet.features;
    const part = { ...sheet.parts[0]!, id: 'pins', name: 'Pin' };
    const pin = (n: number) => ({
      ...sheet.pieces[0]!,
      id: `pin ${n}`,
      partId: 'pins',
      ordinal: n,
      mark: `Q${n}`,
    });
    const read = (seq: number, pieceId: string, featureId: string) => ({
      ...sheet.readings[0]!,
      id: `r${seq}`,
      seq,
      pieceId,
      featureId,
    });
    const run = jobView({
      ...sheet,
      parts: [...sheet.parts, part],
      pieces: [...sheet.pieces, pin(1), pin(2), pin(3)],
      features: [first!, { ...other!, partId: 'pins' }],
      readings: [
        read(1, 'pin 2', 'second'),
        read(2, 'piece 3', first!.id),
        read(3, 'pin 1', 'second'),
        read(4, 'piece 1', first!.id),
      ],
    }).runs[0]!;
    expect(run.pieces.map(({ mark }) => mark)).toEqual(['Q2', 'W3', 'Q1', 'W1', 'W2', 'Q3']);
    expect(run.pieces.map(({ ordinal }) => ordinal)).toEqual([1, 2, 3, 4, 5, 6]);
  });

  it('are the same as columns for the closer look: turns, departures and names', () => {
    const sheet = twoFeatures([-3, null, -4]);
    const run = jobView(sheet).runs[0]!;
    const name = run.feature.name.toLowerCase();
    const series = alikeSeries(sheet, run.run);
    expect(series).toEqual({
      ordinals: [1, 2, 3, 6],
      sizesPm: [-10 * um, -3 * um, -12 * um, -4 * um],
      marks: [`W1 ${name}`, 'W1 crank pin', `W2 ${name}`, 'W3 crank pin'],
    });
    expect(series.ordinals).toEqual(run.points.map(({ ordinal }) => ordinal));
    expect(series.marks).toEqual(run.points.map(({ mark }) => mark));
    const [first, other] = sheet.features;
    const struck = {
      ...sheet,
      features: [first!, { ...other!, struckAt: '2026-03-14T12:00:00Z' }],
    };
    expect(alikeSeries(struck, run.run).marks).toEqual(['W1', 'W2']);
  });
});

describe('a piece whose readings were all set aside', () => {
  const run = smallRun({
    sizes: [-9, -8, 40, -6],
    corrections: (sheet) => [
      {
        ...sheet.readings[2]!,
        id: 'c1',
        seq: 50,
        readingId: 'reading 3',
        kind: 'void',
        reason: 'swarf on the anvil',
        toPieceId: null,
        toFeatureId: null,
        toStation: null,
        toDirection: null,
        text: null,
        unit: null,
        valuePm: null,
        resolutionPm: null,
      },
    ],
  });

  it('is no point, and stays in the record with its reason', () => {
    expect(run.points.map(({ mark }) => mark)).toEqual(['W1', 'W2', 'W4']);
    expect(run.aside).toMatchObject([
      { mark: 'W3', ordinal: 3, reason: 'swarf on the anvil', valuePm: 12_040_000_000 },
    ]);
    expect([...run.read]).toEqual([1, 2, 3, 4]);
  });
});
