import { describe, expect, it } from 'vitest';
import { jobView, type JobView } from '@/lib/rules/job-view';
import type { PairChange } from '@/lib/rules/pair-flag';
import { pairLook } from '@/lib/rules/pair-look';
import type { Cut, Fit, Pair } from '@/lib/schema/fit';
import type { Piece } from '@/lib/schema/part';
import type { JobSheet } from '@/lib/schema/sheet';
import { correctionOf, mm, readingOf, um } from './make';
import { smallJob } from './small-job';

// Invented sizes, six readings each: L1 is 18.010, P1 is 18.000, so the pair is 0.010 clear of 0.008 to 0.012.
// Readings 1 to 6 are L1's, 7 to 12 L2's, 13 to 18 the piston's. The mean governs: one of six that is 2 larger
// makes the piston a third of a micrometre larger, a seventh one that is 1 larger a seventh.

const six = (microns: number) => Array.from({ length: 6 }, () => microns);
const at = '2026-03-14T11:00:00Z';
const start = smallJob({ bores: [six(10), six(11)], shafts: [six(0)] });
const idOf = (mark: string) => start.sheet.pieces.find((piece) => piece.mark === mark)!.id;
const [mic, other] = start.sheet.gauges;

/** The job with L1 and P1 made final, from which each test goes on. */
const made: JobSheet = { ...start.sheet, pairs: [finalPair(start)] };

function finalPair(view: JobView, over: Partial<Pair> = {}): Pair {
  const fit = view.fits[0]!;
  const pair = fit.pairs.find(({ internalPieceId }) => internalPieceId === idOf('L1'))!;
  const look = pairLook(view, fit, pair, { act: 'made final', at, personId: null });
  return {
    id: 'pair',
    version: 1,
    createdAt: at,
    struckAt: null,
    jobId: view.sheet.job.id,
    fitId: fit.fit.id,
    internalPieceId: idOf('L1'),
    externalPieceId: idOf('P1'),
    state: 'final',
    mark: '1',
    clearancePm: look.clearancePm,
    uncertaintyPm: look.uncertaintyPm,
    decidedAt: at,
    personId: null,
    looks: [look],
    ...over,
  };
}

const pairIn = (sheet: JobSheet) => jobView(sheet).fits[0]!.pairs.find(({ pair }) => pair !== null);
const flagOf = (sheet: JobSheet) => pairIn(sheet)?.flag ?? null;

/** Another reading of the piston, after all others. */
const more = (microns: number, over: Parameters<typeof readingOf>[1] = {}) => {
  const last = made.readings.at(-1)!;
  return { ...last, id: 'more', seq: 900, valuePm: 18 * mm + microns * um, ...over };
};
const corrected = (n: number, over: Parameters<typeof correctionOf>[1]): JobSheet => ({
  ...made,
  corrections: [correctionOf(n, over)],
});
const withFit = (over: Partial<Fit>): JobSheet => ({
  ...made,
  fits: made.fits.map((fit) => ({ ...fit, ...over })),
});
const withP1 = (over: Partial<Piece>, sheet = made): JobSheet => ({
  ...sheet,
  pieces: sheet.pieces.map((piece) => (piece.id === idOf('P1') ? { ...piece, ...over } : piece)),
});
const withMic = (over: object): JobSheet => ({
  ...made,
  gauges: made.gauges.map((gauge) => (gauge.id === mic!.id ? { ...gauge, ...over } : gauge)),
});

describe('a final pair', () => {
  it('keeps all that it stood on', () => {
    const [look] = made.pairs[0]!.looks!;
    expect(look).toMatchObject({ clearancePm: 10 * um, minPm: 8 * um, maxPm: 12 * um });
    expect(look!.internal).toMatchObject({ sizePm: 18_010 * um, gaugeId: mic!.id });
    expect(look!.external!.readings).toHaveLength(6);
    expect(look!.external!.readings[0]).toMatchObject({ id: 'reading 13', valuePm: 18 * mm });
  });

  it('raises no flag while nothing of it has changed, whatever else the job does', () => {
    expect(flagOf(made)).toBeNull();
    const elsewhere = more(7, { pieceId: idOf('P2') });
    const busier = { ...made, readings: [...made.readings, elsewhere, { ...elsewhere, id: 'b' }] };
    expect(flagOf({ ...busier, fits: withFit({ aimPm: 9 * um }).fits })).toBeNull();
  });

  it.each<[string, JobSheet, PairChange[], number | null]>([
    [
      'a reading taken back',
      corrected(13, { kind: 'void' }),
      [{ kind: 'taken back', stepPm: um, side: 'external', valuesPm: [18 * mm] }],
      10,
    ],
    [
      'two taken back, said together',
      {
        ...made,
        corrections: [correctionOf(1, { kind: 'void' }), correctionOf(2, { kind: 'void' })],
      },
      [{ kind: 'taken back', stepPm: um, side: 'internal', valuesPm: [18_010 * um, 18_010 * um] }],
      10,
    ],
    [
      'one of each side taken back, said apart',
      {
        ...made,
        corrections: [correctionOf(1, { kind: 'void' }), correctionOf(13, { kind: 'void' })],
      },
      [
        { kind: 'taken back', stepPm: um, side: 'internal', valuesPm: [18_010 * um] },
        { kind: 'taken back', stepPm: um, side: 'external', valuesPm: [18 * mm] },
      ],
      10,
    ],
    [
      'a reading corrected',
      corrected(13, { kind: 'mistyped', text: '18.002', unit: 'mm', valuePm: 18_002 * um, resolutionPm: um }), // prettier-ignore
      [{ kind: 'mistyped', stepPm: um, side: 'external', fromPm: 18 * mm, toPm: 18_002 * um }],
      10 - 2 / 6,
    ],
    [
      'a reading moved to another piece',
      corrected(13, { kind: 'move', toPieceId: idOf('P2'), toFeatureId: made.fits[0]!.externalFeatureId }), // prettier-ignore
      [
        {
          kind: 'moved', stepPm: um, side: 'external', valuePm: 18 * mm, toPieceId: idOf('P2'),
          toFeatureId: made.fits[0]!.externalFeatureId,
        }, // prettier-ignore
      ],
      10,
    ],
    [
      'a reading moved to another place of the piece',
      corrected(13, {
        kind: 'move', toPieceId: idOf('P1'), toFeatureId: made.fits[0]!.externalFeatureId,
        toStation: 'crown', toDirection: 'B',
      }), // prettier-ignore
      [
        {
          kind: 'moved place',
          stepPm: um,
          side: 'external',
          valuePm: 18 * mm,
          from: 'crown A',
          to: 'crown B',
        },
      ],
      10,
    ],
    [
      'another reading that counts',
      { ...made, readings: [...made.readings, more(1)] },
      [{ kind: 'counts too', stepPm: um, side: 'external', valuesPm: [18_001 * um] }],
      10 - 1 / 7,
    ],
    [
      'a cut',
      { ...made, cuts: [cutAfter('reading 18')] },
      [
        {
          kind: 'cut since',
          stepPm: um,
          side: 'external',
          valuesPm: Array(6).fill(18 * mm) as number[],
        },
      ],
      null,
    ],
    [
      'a gauge known less well than was said',
      withMic({ uncertaintyPm: 3 * um }),
      [{ kind: 'gauge known to', gaugeId: mic!.id, fromPm: mic!.uncertaintyPm, toPm: 3 * um }],
      10,
    ],
    [
      'a gauge that reads coarser than was said',
      withMic({ resolutionPm: 10 * um }),
      [{ kind: 'gauge reads to', gaugeId: mic!.id, fromPm: um, toPm: 10 * um }],
      10,
    ],
    [
      'a gauge struck out',
      withMic({ struckAt: at }),
      [{ kind: 'gauge struck', gaugeId: mic!.id }],
      10,
    ],
    [
      'a finer gauge that tells the size now',
      {
        ...made,
        gauges: made.gauges.map((g) => (g.id === other!.id ? { ...g, resolutionPm: 1000 } : g)),
        readings: [...made.readings, more(3, { gaugeId: other!.id })],
      },
      [{ kind: 'other gauge', side: 'external', fromGaugeId: mic!.id, toGaugeId: other!.id }],
      7,
    ],
    [
      'another clearance wanted',
      withFit({ minPm: 11 * um, maxPm: 14 * um, aimPm: 12 * um }),
      [
        {
          kind: 'wanted',
          from: { minPm: 8 * um, maxPm: 12 * um },
          to: { minPm: 11 * um, maxPm: 14 * um },
        },
      ],
      10,
    ],
    [
      'the extremes made to govern',
      withFit({ governs: 'extreme' }),
      [{ kind: 'governs', from: 'mean', to: 'extreme' }],
      10,
    ],
    [
      'a piece struck out',
      withP1({ struckAt: at }),
      [{ kind: 'piece struck', side: 'external' }],
      10,
    ],
    [
      'a piece scrapped',
      withP1({ fate: 'scrapped' }),
      [{ kind: 'piece scrapped', side: 'external' }],
      10,
    ],
    [
      'a piece to be sleeved',
      withP1({ fate: 'sleeve' }),
      [{ kind: 'to be sleeved', side: 'external' }],
      10,
    ],
    [
      'readings that are not there any more',
      { ...made, readings: made.readings.filter(({ seq }) => seq === 1 || seq > 6) },
      [{ kind: 'taken back', stepPm: um, side: 'internal', valuesPm: Array(5).fill(18_010 * um) as number[] }],
      10,
    ], // prettier-ignore
  ])('is flagged by %s, which is named', (_, sheet, changes, clearanceUm) => {
    const pair = pairIn(sheet)!;
    expect(pair).toMatchObject({ state: 'final', changedSince: true });
    expect(pair.flag!.changes).toEqual(changes);
    expect(pair.flag!.was).toMatchObject({ clearancePm: 10 * um });
    const now = pair.flag!.now?.clearancePm;
    expect(now === undefined ? null : now).toBe(
      clearanceUm === null ? null : Math.round(clearanceUm * um),
    );
    expect(pair.pair!.clearancePm).toBe(10 * um);
  });

  it('loses its flag when a person lets it stand, and gets a new one from the next change', () => {
    const sheet = { ...made, readings: [...made.readings, more(1)] };
    const view = jobView(sheet);
    const fit = view.fits[0]!;
    const look = pairLook(view, fit, fit.pairs[0]!, { act: 'let stand', at, personId: null });
    const stands = {
      ...sheet,
      pairs: [{ ...made.pairs[0]!, looks: [...made.pairs[0]!.looks!, look] }],
    };
    expect(flagOf(stands)).toBeNull();
    expect(stands.pairs[0]!.clearancePm).toBe(10 * um);
    const again = { ...stands, corrections: [correctionOf(13, { kind: 'void' })] };
    expect(flagOf(again)).toMatchObject({
      was: { clearancePm: Math.round((10 - 1 / 7) * um) },
      changes: [{ kind: 'taken back' }],
    });
  });

  it('let stand without a size stands until there is one again', () => {
    const none = { ...made, readings: made.readings.slice(0, 12) };
    const view = jobView(none);
    const fit = view.fits[0]!;
    expect(fit.pairs[0]!.flag!.now).toBeNull();
    const look = pairLook(view, fit, fit.pairs[0]!, { act: 'let stand', at, personId: null });
    expect(look).toMatchObject({ clearancePm: null, external: null });
    const stands = { ...none, pairs: [{ ...made.pairs[0]!, looks: [look] }] };
    expect(flagOf(stands)).toBeNull();
    const back = { ...stands, readings: made.readings };
    expect(flagOf(back)!.changes).toEqual([{ kind: 'sized again', side: 'external' }]);
  });

  it.each<[string, Partial<Piece>]>([
    ['struck out', { struckAt: at }],
    ['scrapped', { fate: 'scrapped' }],
    ['to be sleeved', { fate: 'sleeve' }],
  ])('with a piece %s can be let stand, and is flagged when that is taken up again', (_, over) => {
    const gone = withP1(over);
    const fit = jobView(gone).fits[0]!;
    expect(fit.externals.map(({ piece }) => piece.mark)).not.toContain('P1');
    expect(fit.every.get(idOf('P1'))!.size!.valuePm).toBe(18 * mm);
    const look = pairLook(jobView(gone), fit, fit.pairs[0]!, {
      act: 'let stand',
      at,
      personId: null,
    });
    expect(look.external!.readings).toHaveLength(6);
    const stands = {
      ...gone,
      pairs: [{ ...made.pairs[0]!, looks: [...made.pairs[0]!.looks!, look] }],
    };
    expect(flagOf(stands)).toBeNull();
    const back = withP1({ struckAt: null, fate: null }, stands);
    expect(flagOf(back)!.changes).toEqual([{ kind: 'piece back', side: 'external' }]);
  });

  it('of an earlier notebook is compared by its clearance alone', () => {
    const old = { ...made, pairs: [{ ...made.pairs[0]!, looks: [] }] };
    expect(flagOf(old)).toBeNull();
    expect(flagOf({ ...old, readings: [...made.readings, more(1)] })).toMatchObject({
      was: { clearancePm: 10 * um },
      now: { clearancePm: Math.round((10 - 1 / 7) * um) },
      changes: [{ kind: 'not known' }],
    });
    expect(flagOf({ ...old, readings: made.readings.slice(0, 12) })!.changes).toEqual([
      { kind: 'no size', side: 'external' },
    ]);
  });
});

function cutAfter(lastReadingId: string): Cut {
  return {
    id: 'cut',
    version: 1,
    createdAt: at,
    struckAt: null,
    jobId: made.job.id,
    pieceId: idOf('P1'),
    featureId: made.fits[0]!.externalFeatureId,
    ordinal: 1,
    lastReadingId,
    spring: false,
    askedPm: um,
    beforePm: 18 * mm,
    afterPm: null,
    tool: '',
  };
}
