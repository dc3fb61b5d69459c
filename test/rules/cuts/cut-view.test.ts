import { describe, expect, it } from 'vitest';
import { cutView, type CutSaid } from '@/lib/rules/cuts/cut-view';
import { lastSlide } from '@/lib/rules/cuts/last-slide';
import { pastChoices } from '@/lib/rules/cuts/past-choices';
import { cellKey } from '@/lib/rules/cells';
import { jobView, type JobView } from '@/lib/rules/job-view';
import type { Cut } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleSheet, exampleUncut } from '../example-sheet';
import { mm, readingOf, um } from '../make';
import { smallJob } from '../small-job';
import { aCut } from './a-cut';

const said: CutSaid = {
  slide: { dial: 'radius', divisionPm: 10 * um, fineFeed: 1, bitesPm: 20 * um },
  lapPm: 0,
  changed: null,
  temperatureMilliC: null,
};

const markOf = (view: JobView, id: string | undefined) =>
  view.sheet.pieces.find((piece) => piece.id === id)?.mark;
const at = (view: JobView, mark: string, balloon: string) => ({
  pieceId: view.sheet.pieces.find((piece) => piece.mark === mark)!.id,
  featureId: view.sheet.features.find((feature) => feature.balloon === balloon)!.id,
});

/** The example's P7, at 18.086 and made to L7 (18.010), after cuts and readings of its own. */
function p7(cuts: readonly Partial<Cut>[], readings: readonly number[]): JobView {
  const sheet: JobSheet = exampleUncut();
  const view = jobView(sheet);
  const place = at(view, 'P7', '4');
  const like = sheet.readings.findLast((reading) => reading.pieceId === place.pieceId)!;
  const most = Math.max(...sheet.readings.map(({ seq }) => seq));
  const own = readings.map((microns, i) => ({
    ...readingOf(most + 1 + i),
    ...place,
    gaugeId: like.gaugeId,
    jobId: sheet.job.id,
    station: 'middle',
    valuePm: 18 * mm + microns * um,
  }));
  const ids = [like.id, ...own.map(({ id }) => id)];
  return jobView({
    ...sheet,
    readings: [...sheet.readings, ...own],
    cuts: cuts.map((cut, i) => ({
      ...aCut(i + 1, { ...place, jobId: sheet.job.id, lastReadingId: ids[i]! }),
      ...cut,
    })),
  });
}

describe('cutView of the example', () => {
  it('tells of the three cuts P7 had, and what the next will leave', () => {
    const view = jobView(exampleSheet());
    const cut = cutView(view, at(view, 'P7', '4'), { ...said, slide: lastSlide(view.sheet.cuts) })!;
    // Asked 0.200, 0.200, 0.140; 18.590 to 18.405, 18.217 and 18.0863: got 0.185, 0.188, 0.1307.
    expect(cut.steps.map(({ askedPm, gotPm }) => [askedPm! / um, Math.round(gotPm! / um)])).toEqual(
      [
        [200, 185],
        [200, 188],
        [140, 131],
      ],
    );
    expect(cut.learnt.learned).toMatchObject({ kind: 'spread', used: 3 });
    // The mean of 0.9250, 0.9400 and 0.9333.
    expect((cut.learnt.learned as { mean: number }).mean).toBeCloseTo(0.9328, 4);
    expect(cut.advice).toMatchObject({ kind: 'cut' });
    expect(cut.expected!.valuePm).toBeLessThan(cut.aim.now!.valuePm);
  });

  it('turns P7 to the target of its card, with the metal left on diameter', () => {
    const view = jobView(exampleUncut());
    const cut = cutView(view, at(view, 'P7', '4'), said)!;
    const target = view.fits[0]!.toMake.find(({ pieceId }) => pieceId === cut.piece.id)!;
    expect(cut.aim).toMatchObject({
      side: 'external',
      aimPm: target.targetPm,
      noLargerPm: target.noLargerPm,
      noSmallerPm: target.noSmallerPm,
    });
    expect(markOf(view, cut.aim.partner!.pieceId)).toBe('L7');
    expect([cut.leftPm, cut.turnToPm]).toEqual([target.leftPm, target.targetPm]);
    expect(cut.advice).toMatchObject({ kind: 'cut', how: 'learning' });
    expect(cut.expected).toBeNull();
  });

  // L7 is 18.010, the fit 0.008 to 0.012; standard uncertainties of 0.000325 and 0.000600, 1.65 of both: 0.00113.
  it.each([
    ['the least clearance', 8, 2, 18_001_129_502, { kind: 'cut' }],
    ['the least clearance, and there', 8, 1, 18_001_129_502, { kind: 'made', proven: true }],
    ['the most clearance, and within it', 12, -1, 17_998_870_498, { kind: 'made', proven: true }],
  ] as const)(
    'turns to the nearest size that can be proved where the aim is %s',
    (_, aim, microns, turnToPm, advice) => {
      const { sheet } = p7([], []);
      const { pieceId, featureId } = at(jobView(sheet), 'P7', '4');
      const view = jobView({
        ...sheet,
        fits: sheet.fits.map((fit) => ({ ...fit, aimPm: aim * um })),
        readings: sheet.readings.map((one) =>
          one.pieceId === pieceId && one.featureId === featureId
            ? { ...one, valuePm: 18 * mm + microns * um }
            : one,
        ),
      });
      const slide = { ...said.slide!, divisionPm: 100_000, bitesPm: 0 };
      const cut = cutView(view, { pieceId, featureId }, { ...said, slide })!;
      expect(cut.turnToPm).toBe(turnToPm);
      expect(cut.advice).toMatchObject(advice);
    },
  );

  it('knows limits of a drawing that its gauge cannot prove', () => {
    const { sheet } = smallJob({ bores: [[10, 10, 10]] });
    const place = at(jobView(sheet), 'L1', '1');
    const toDrawing = (lower: number, upper: number) =>
      cutView(
        jobView({
          ...sheet,
          fits: [],
          features: sheet.features.map((one) =>
            one.id === place.featureId ? { ...one, lowerPm: lower * um, upperPm: upper * um } : one,
          ),
        }),
        place,
        said,
      )!;
    expect(toDrawing(0, 18).aim.provable).toBe(true);
    const narrow = toDrawing(9.8, 10.2);
    expect(narrow.aim.provable).toBe(false);
    expect(narrow.advice).toEqual({ kind: 'made', proven: false });
  });

  it('leaves on what is to be lapped', () => {
    const view = jobView(exampleSheet());
    const plain = cutView(view, at(view, 'P7', '4'), said)!;
    const lapped = cutView(view, at(view, 'P7', '4'), { ...said, lapPm: 6 * um })!;
    expect(lapped.turnToPm - plain.turnToPm).toBe(6 * um);
    expect(plain.leftPm! - lapped.leftPm!).toBe(6 * um);
  });

  it('learns from two cuts, foretells the third, and keeps its partner', () => {
    const cuts = [{ askedPm: 20 * um }, { askedPm: 20 * um }];
    const view = p7(cuts, [67, 48]);
    const cut = cutView(view, at(view, 'P7', '4'), said)!;
    // From the largest place of three readings, 18.0863, to 18.067 and 18.048.
    expect(cut.steps.map(({ gotPm }) => Math.round(gotPm! / um))).toEqual([19, 19]);
    expect(cut.learnt.learned).toMatchObject({ kind: 'spread', used: 2 });
    expect(cut.expected!.valuePm).toBeLessThan(cut.aim.now!.valuePm);
    expect(markOf(view, cut.aim.partner!.pieceId)).toBe('L7');
  });

  it('is silent after something was changed', () => {
    const view = p7([{ askedPm: 20 * um }, { askedPm: 20 * um }], [67, 48]);
    const cut = cutView(view, at(view, 'P7', '4'), { ...said, changed: 'tool' })!;
    expect(cut.learnt.learned.kind).toBe('nothing');
    expect(cut.expected).toBeNull();
  });

  it('asks to measure after a cut that was not measured', () => {
    const view = p7([{ askedPm: 20 * um }], []);
    const cut = cutView(view, at(view, 'P7', '4'), said)!;
    expect(cut.advice).toEqual({ kind: 'measure' });
    expect(cut.leftPm).toBeNull();
  });

  it('catches P7 past the stop of the liner it was cut for, though the pairing looks elsewhere', () => {
    const view = jobView(exampleSheet());
    const l7 = at(view, 'L7', '1').pieceId;
    const past = p7([{ askedPm: 100 * um, partnerPieceId: l7 }], [-15]);
    const cut = cutView(past, at(past, 'P7', '4'), said)!;
    expect(markOf(past, cut.aim.partner!.pieceId)).toBe('L7');
    expect(cut.advice.kind).toBe('past');
    expect(cut.choices!.sleevePm).toBe(cut.aim.aimPm - cut.aim.now!.valuePm);
  });

  it('cuts a plain feature to the middle of its drawn limits', () => {
    const view = jobView(exampleSheet());
    const cut = cutView(view, at(view, 'L6', '2'), said)!;
    expect(cut.aim).toMatchObject({ side: 'external', partner: null, aimPm: 52 * mm });
  });

  it('has nothing to cut to where neither a partner nor two limits say so', () => {
    const view = smallJob({ shafts: [[86]] });
    expect(cutView(view, at(view, 'P1', '4'), said)).toBeNull();
    expect(cutView(view, { pieceId: 'nobody', featureId: 'nothing' }, said)).toBeNull();
  });

  it('says by how much a warm piece reads large, from its material and its temperature', () => {
    const view = jobView(exampleSheet());
    const warm = (temperatureMilliC: number) =>
      cutView(view, at(view, 'P7', '4'), { ...said, temperatureMilliC })!.warm;
    // 18.086 of grey iron, 11.4e-6: at 41 degrees C 0.00433 larger, at 22 0.00041.
    expect(warm(41_000)).toMatchObject({ kind: 'wait', temperatureMilliC: 41_000 });
    expect((warm(41_000) as { excessPm: number }).excessPm / um).toBeCloseTo(4.33, 2);
    expect(warm(22_000)).toMatchObject({ kind: 'go on' });
  });
});

describe('bores made to their shafts', () => {
  it('is bored up to the shaft of its number, with the metal still to come out', () => {
    const view = smallJob({
      bores: [[-60, -60, -60]],
      shafts: [[0, 0, 0]],
      fit: { minPm: 8 * um },
    });
    const [target] = view.fits[0]!.toBore;
    expect(target).toMatchObject({
      make: 'internal',
      targetPm: 18 * mm + 10 * um,
      leftPm: 70 * um,
    });
    const cut = cutView(view, at(view, 'L1', '1'), said)!;
    expect(cut.aim).toMatchObject({ side: 'internal', aimPm: 18 * mm + 10 * um });
    expect(markOf(view, cut.aim.partner!.pieceId)).toBe('P1');
    expect(view.matesByFeature.get(cellKey(cut.piece.id, cut.feature.id))?.state).toBe('to make');
  });

  it('comes from a pair locked before the bore was made', () => {
    const view = smallJob({
      bores: [[10, 10, 10]],
      shafts: [
        [0, 0, 0],
        [-8, -8, -8],
      ],
      pairs: [{ state: 'locked', bore: 2, shaft: 1 }],
    });
    const [target] = view.fits[0]!.toBore;
    expect([markOf(view, target!.pieceId), markOf(view, target!.partnerId)]).toEqual(['L3', 'P2']);
    expect(target!.targetPm).toBe(18 * mm + 2 * um);
    expect(view.fits[0]!.withoutPartner).toEqual([]);
  });

  it('never takes a bore that is kept apart from the shaft', () => {
    const view = smallJob({
      bores: [[-60, -60, -60]],
      shafts: [[0, 0, 0]],
      pairs: [{ state: 'left out', bore: 0, shaft: 0 }],
    });
    expect(view.fits[0]!.toBore).toEqual([]);
  });

  it('makes a shaft to the bore it was locked to, not to that of its number', () => {
    const view = smallJob({
      bores: [
        [10, 10, 10],
        [14, 14, 14],
      ],
      shafts: [[80, 80, 80]],
      pairs: [{ state: 'locked', bore: 1, shaft: 0 }],
    });
    const [target] = view.fits[0]!.toMake;
    expect([markOf(view, target!.pieceId), markOf(view, target!.partnerId)]).toEqual(['P1', 'L2']);
    expect(view.fits[0]!.pairs).toEqual([]);
  });
});

describe('a piece that is scrapped or waits for a sleeve', () => {
  it.each(['scrapped', 'sleeve'] as const)('takes no part in the pairing: %s', (fate) => {
    const before = smallJob({ bores: [[10, 10, 10]], shafts: [[0, 0, 0]] });
    expect(before.fits[0]!.pairs).toHaveLength(1);
    const gone = at(before, 'P1', '4').pieceId;
    const view = jobView({
      ...before.sheet,
      pieces: before.sheet.pieces.map((piece) => (piece.id === gone ? { ...piece, fate } : piece)),
    });
    expect(view.fits[0]!.pairs).toEqual([]);
    expect(view.fits[0]!.externals.map(({ piece }) => piece.id)).not.toContain(gone);
    const bore = at(view, 'L1', '1');
    expect(view.matesByFeature.get(cellKey(bore.pieceId, bore.featureId))?.state).toBe('to make');
    const [was, is] = [before, view].map((one) => one.progress);
    expect(is!.made).toBe(was!.made - 1);
    expect(is!.of).toBe(was!.of - (fate === 'scrapped' ? 1 : 0));
    expect(cutView(view, at(view, 'P1', '4'), said)).toBeNull();
  });
});

describe('what can become of a piece past its stop', () => {
  /** P1 cut for L1 (18.010) and gone to 17.990: 0.010 past the 18.000 of the aim, 0.008 past the limit. */
  function past(bores: number[][], pairs: Parameters<typeof smallJob>[0]['pairs'] = []) {
    const view = smallJob({ bores, shafts: [[-10, -10, -10]], pairs });
    const place = at(view, 'P1', '4');
    const sheet: JobSheet = {
      ...view.sheet,
      cuts: [
        aCut(1, { ...place, lastReadingId: null, partnerPieceId: at(view, 'L1', '1').pieceId }),
      ],
    };
    const now = jobView(sheet);
    return { view: now, cut: cutView(now, place, said)! };
  }

  it('is another bore it suits, the one nearest to the aim', () => {
    const { view, cut } = past([
      [10, 10, 10],
      [1, 1, 1],
      [0, 0, 0],
    ]);
    expect(cut.advice).toMatchObject({ kind: 'past', byPm: 8 * um });
    expect(markOf(view, cut.choices!.other!.partnerId)).toBe('L3');
    expect(cut.choices!.other!.clearancePm).toBe(10 * um);
    expect(cut.choices!.nearest).toBeNull();
  });

  it('is none where none suits, and the nearest is named', () => {
    const { view, cut } = past([
      [10, 10, 10],
      [14, 14, 14],
    ]);
    expect(cut.choices!.other).toBeNull();
    expect(markOf(view, cut.choices!.nearest!.partnerId)).toBe('L1');
  });

  it('is told of a piece that suits none and whose own bore is taken, by the nearest that is free', () => {
    const shafts = [
      [-30, -30, -30],
      [0, 0, 0],
    ];
    const bores = [
      [10, 10, 10],
      [60, 60, 60],
      [40, 40, 40],
    ];
    const cutOf = (job: Parameters<typeof smallJob>[0]) => {
      const view = smallJob({ shafts, ...job });
      const cut = cutView(view, at(view, 'P1', '4'), said);
      return [markOf(view, cut?.aim.partner?.pieceId), cut?.advice] as const;
    };
    // P2 has L1; from L3, 18.040 less the most clearance of 0.012, P1 is 0.058 short.
    expect(cutOf({ bores })).toEqual(['L3', { kind: 'past', byPm: 58 * um }]);
    const apart = { state: 'left out', bore: 2, shaft: 0 } as const;
    expect(cutOf({ bores, pairs: [apart] })).toEqual(['L2', { kind: 'past', byPm: 78 * um }]);
    expect(cutOf({ bores: bores.slice(0, 1) })).toEqual([undefined, undefined]);
    const tied = { state: 'locked', bore: 2, shaft: 4 } as const;
    expect(cutOf({ bores, pairs: [tied] })[0]).toBe('L2');
    // What has limits of its own is held against those.
    const { sheet } = smallJob({ shafts, bores });
    const drawn = jobView({
      ...sheet,
      features: sheet.features.map((one) =>
        one.balloon === '4' ? { ...one, lowerPm: -20 * um, upperPm: 0 } : one,
      ),
    });
    const toDrawing = cutView(drawn, at(drawn, 'P1', '4'), said)!;
    expect([toDrawing.aim.partner, toDrawing.advice]).toEqual([
      null,
      { kind: 'past', byPm: 10 * um },
    ]);
  });

  it('is told of such a bore as well, where every shaft is made', () => {
    const { sheet } = smallJob({
      bores: [
        [60, 60, 60],
        [10, 10, 10],
      ],
      shafts: [
        [0, 0, 0],
        [20, 20, 20],
        [15, 15, 15],
      ],
    });
    const isMade = (mark: string) => !/^P[4-8]$/.test(mark);
    const view = jobView({
      ...sheet,
      pieces: sheet.pieces.filter(({ mark }) => isMade(mark)),
      features: sheet.features.map((one) =>
        one.balloon === '1' ? { ...one, lowerPm: null, upperPm: null } : one,
      ),
    });
    const cut = cutView(view, at(view, 'L1', '1'), said)!;
    // P1 has L2; from P2, 18.020 and the most clearance of 0.012, L1 is 0.028 large.
    expect([markOf(view, cut.aim.partner!.pieceId), cut.advice]).toEqual([
      'P2',
      { kind: 'past', byPm: 28 * um },
    ]);
  });

  it('is a bore not made yet, made to it', () => {
    const { view, cut } = past([[10, 10, 10]]);
    expect(markOf(view, cut.choices!.make!.pieceId)).toBe('L2');
    expect(cut.choices!.make).toMatchObject({ make: 'internal', targetPm: 18 * mm });
  });

  it('is settled once a bore is to be made to it', () => {
    const { view, cut } = past([[10, 10, 10]], [{ state: 'locked', bore: 1, shaft: 0 }]);
    expect(cut).toBeNull();
    const target = view.fits[0]!.toBore[0]!;
    expect([markOf(view, target.pieceId), markOf(view, target.partnerId)]).toEqual(['L2', 'P1']);
  });

  it('is never a bore that waits for another shaft', () => {
    const view = smallJob({
      bores: [[10, 10, 10]],
      shafts: [
        [-10, -10, -10],
        [0, 0, 0],
      ],
      pairs: [{ state: 'locked', bore: 1, shaft: 1 }],
    });
    const cut = cutView(view, at(view, 'P1', '4'), said)!;
    expect(cut.advice.kind).toBe('past');
    expect(markOf(view, cut.choices!.make!.pieceId)).toBe('L3');
  });

  it('says what a sleeve has to put back', () => {
    expect(past([[10, 10, 10]]).cut.choices!.sleevePm).toBe(10 * um);
    // A bore made to the drawing, at 18.020 where 18.010 was aimed at.
    const bored = { ...cutOf(18_010), side: 'internal' as const, partner: null };
    expect(pastChoices(bored, 'L1')).toEqual({
      other: null,
      nearest: null,
      make: null,
      sleevePm: 10 * um,
    });
    function cutOf(aimMicrons: number) {
      const { aim } = past([[10, 10, 10]]).cut;
      return { ...aim, aimPm: aimMicrons * um, now: { ...aim.now!, valuePm: 18_020 * um } };
    }
  });

  it('is a measured bore that still has metal to bore for it', () => {
    const { view, cut } = past([
      [10, 10, 10],
      [-60, -60, -60],
    ]);
    expect(markOf(view, cut.choices!.make!.pieceId)).toBe('L2');
  });
});
