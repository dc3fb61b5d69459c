import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jobView, type JobView } from '@/lib/rules/job-view';
import { rememberedJobView } from '@/lib/rules/remembered-job-view';
import type { Cut } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleSheet } from './example-sheet';
import { correctionOf, readingOf, um } from './make';

const first = exampleSheet();
const nominal = new Map(first.features.map((feature) => [feature.id, feature.nominalPm]));

/** Draws that say what happens to a sheet; a number picks among what is there, whatever that is by then. */
const act = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.record({
      act: fc.constant('read' as const),
      at: fc.nat(),
      offUm: fc.integer({ min: -30, max: 30 }),
      late: fc.boolean(),
      held: fc.boolean(),
    }),
  },
  {
    weight: 4,
    arbitrary: fc.record({
      act: fc.constant('correct' as const),
      at: fc.nat(),
      to: fc.nat(),
      kind: fc.constantFrom(
        'void' as const,
        'restore' as const,
        'count' as const,
        'mistyped' as const,
        'move' as const,
      ),
    }),
  },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('correct first' as const), at: fc.nat() }) },
  { weight: 2, arbitrary: fc.record({ act: fc.constant('cut' as const), at: fc.nat() }) },
  fc.record({
    act: fc.constantFrom(
      'strike a cut',
      'number anew',
      'forget',
      'feature',
      'gauge',
      'go back',
      'turn round',
    ),
    at: fc.nat(),
  }),
);
type Act = typeof act extends fc.Arbitrary<infer Drawn> ? Drawn : never;

describe('rememberedJobView', () => {
  it('gives what jobView gives from scratch, whatever happened to the sheet since', () => {
    fc.assert(
      fc.property(fc.array(act, { maxLength: 25 }), (acts) => {
        const remembered = rememberedJobView();
        let sheet = first;
        let n = 0;
        const before: JobSheet[] = [];
        expectSame(remembered(sheet), jobView(sheet));
        for (const one of acts) {
          before.push(sheet);
          n += 1;
          sheet = one.act === 'go back' ? pickOf(before, one.at) : after(sheet, one, n);
          expectSame(remembered(sheet), jobView(sheet));
        }
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  it('leaves alone what nothing happened to', () => {
    const remembered = rememberedJobView();
    const old = remembered(first);
    const { pieceId, featureId } = first.readings[0]!;
    const row = { ...first.readings[0]!, id: 'again', seq: 9000 };
    const now = remembered({ ...first, readings: [...first.readings, row] });
    const others = [...now.cells.byKey].filter(
      ([key, cell]) => cell !== old.cells.byKey.get(key) && cell.limitsFrom === 'drawing',
    );
    expect(others.map(([key]) => key)).toContain(`${pieceId} ${featureId}`);
    // Cells of three readings or more stand on themselves; only those that lean on the gauge's history follow it.
    const needless = others.filter(
      ([key, { size }]) =>
        key !== `${pieceId} ${featureId}` && size?.repeatability === 'own spread',
    );
    expect(needless).toEqual([]);
  });

  it('hears of a cut before the reading it names, also when that was moved to another piece', () => {
    const remembered = rememberedJobView();
    const [here, there] = first.pieces.filter(({ partId }) => partId === first.pieces[0]!.partId);
    const feature = first.features.find(({ partId }) => partId === here!.partId)!;
    const at = { pieceId: here!.id, featureId: feature.id, gaugeId: first.gauges[0]!.id };
    const rows = [
      readingOf(1, { ...at, seq: 6010 }),
      readingOf(2, { ...at, seq: 6015 }),
      readingOf(3, { ...at, seq: 6020 }),
    ];
    const moved = correctionOf(3, { kind: 'move', toPieceId: there!.id });
    const withCut = after(
      { ...first, readings: rows, corrections: [moved] },
      { act: 'cut', at: 2 },
      1,
    );
    const earlier = (sheet: JobSheet) =>
      remembered(sheet).cell(here!.id, feature.id).earlier.length;
    expect(earlier({ ...withCut, readings: rows.slice(0, 2) })).toBe(0);
    expect(earlier(withCut)).toBe(2);
  });

  it('goes on after a sheet that could not be worked out', () => {
    const remembered = rememberedJobView();
    remembered(first);
    const broken = { ...first.readings[0]!, id: 'broken', seq: 9000, valuePm: NaN };
    expect(() => remembered({ ...first, readings: [...first.readings, broken] })).toThrow();
    const row = { ...first.readings[0]!, id: 'whole', seq: 9001 };
    const sheet = { ...first, readings: [...first.readings, row] };
    expectSame(remembered(sheet), jobView(sheet));
  });
});

/** Letter for letter, in the order in which it is gone through; what a drift line can be asked is left out. */
function expectSame(got: JobView, wanted: JobView): void {
  expect(said(got)).toBe(said(wanted));
}

function said({ cell: _ask, sheet: _same, ...view }: JobView): string {
  return JSON.stringify(view, (_, value: unknown) => {
    if (value instanceof Map || value instanceof Set) return [...value];
    return typeof value === 'number' && !Number.isFinite(value) ? String(value) : value;
  });
}

function after(sheet: JobSheet, one: Act, n: number): JobSheet {
  switch (one.act) {
    case 'read': {
      const feature = pickOf(sheet.features, one.at);
      const pieces = sheet.pieces.filter((piece) => piece.partId === feature.partId);
      const row = readingOf(n, {
        id: `drawn ${n}`,
        // A late one has been in the book for long and is only heard of now.
        seq: one.late ? n / 100 : 5000 + n,
        pieceId: pickOf(pieces, one.at >> 3).id,
        featureId: feature.id,
        gaugeId: pickOf(sheet.gauges, one.at >> 5).id,
        valuePm: nominal.get(feature.id)! + one.offUm * um,
        heldAs: one.held ? 'far off' : null,
      });
      const readings = [...sheet.readings, row];
      return { ...sheet, readings: one.late ? readings.sort((a, b) => a.seq - b.seq) : readings };
    }
    case 'correct': {
      const target = pickOf(sheet.readings, one.at);
      const to = pickOf(sheet.readings, one.to);
      const row = correctionOf(n, {
        kind: one.kind,
        readingId: target.id,
        ...(one.kind === 'mistyped' ? { valuePm: target.valuePm + um, text: 'drawn' } : {}),
        ...(one.kind === 'move' ? { toPieceId: to.pieceId, toFeatureId: to.featureId } : {}),
      });
      return { ...sheet, corrections: [...sheet.corrections, row] };
    }
    case 'correct first': {
      // It names a reading that comes two acts later, if it comes.
      const row = correctionOf(n, { kind: 'void', readingId: `drawn ${n + 2}` });
      return { ...sheet, corrections: [row, ...sheet.corrections] };
    }
    case 'cut': {
      const last = pickOf(sheet.readings, one.at);
      const { pieceId, featureId } = last;
      const cut = {
        id: `cut ${n}`,
        jobId: 'job',
        pieceId,
        featureId,
        ordinal: n,
        lastReadingId: last.id,
        spring: false,
        askedPm: 0,
        beforePm: last.valuePm,
        afterPm: null,
        tool: '',
        version: 1,
        createdAt: '2026-03-14T10:00:00Z',
        struckAt: null,
      } satisfies Cut;
      return { ...sheet, cuts: [...sheet.cuts, cut] };
    }
    case 'strike a cut':
      return {
        ...sheet,
        cuts: changed(sheet.cuts, one.at, (cut) => ({ ...cut, struckAt: '2026-03-14T10:00:00Z' })),
      };
    case 'number anew': {
      // A reading of this device got into the book: the same reading is another row there.
      const readings = changed(sheet.readings, one.at, (row) => ({ ...row, seq: row.seq + 0.5 }));
      return { ...sheet, readings: readings.sort((a, b) => a.seq - b.seq) };
    }
    case 'forget': {
      const gone = pickOf(sheet.readings, one.at);
      return { ...sheet, readings: sheet.readings.filter((row) => row !== gone) };
    }
    case 'feature':
      return {
        ...sheet,
        features: changed(sheet.features, one.at, (feature) => ({
          ...feature,
          lowerPm: one.at % 3 === 0 ? null : -one.at % (20 * um),
          upperPm: one.at % 3 === 0 ? null : 20 * um,
          struckAt: one.at % 5 === 0 ? '2026-03-14T10:00:00Z' : null,
        })),
      };
    case 'gauge':
      return {
        ...sheet,
        gauges: changed(sheet.gauges, one.at, (gauge) => ({
          ...gauge,
          uncertaintyPm: one.at % 2 === 0 ? null : 3 * um,
          resolutionPm: one.at % 4 === 0 ? 10 * um : um,
        })),
      };
    default:
      return { ...sheet, readings: [...sheet.readings].reverse() };
  }
}

function pickOf<T>(list: readonly T[], at: number): T {
  return list[at % list.length]!;
}

function changed<T>(list: readonly T[], at: number, change: (one: T) => T): T[] {
  const index = list.length === 0 ? 0 : at % list.length;
  return list.map((one, i) => (i === index ? change(one) : one));
}
