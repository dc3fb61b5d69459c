import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import type { JobSheet } from '@/lib/schema/sheet';
import { NewReading } from '@/lib/schema/reading';
import { JobStart } from '@/lib/schema/new-job';
import { exampleJob } from '@/seed/hot-air-fan';
import { correctionOf, um } from './make';
import { aCut } from './cuts/a-cut';
import { exampleSheet, exampleUncut } from './example-sheet';

// The facts below were written down from the invented readings before the code was run: the clearances are
// differences of the listed sizes, the pairing is the one with every pair 1 µm or less from the aim.

const view = jobView(exampleSheet());
const pieceOf = (mark: string) => view.sheet.pieces.find((piece) => piece.mark === mark)!;
const featureOf = (balloon: string) => view.sheet.features.find((f) => f.balloon === balloon)!;
const cellOf = (mark: string, balloon: string) =>
  view.cell(pieceOf(mark).id, featureOf(balloon).id);
const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)!.mark;
const fit = view.fits[0]!;

describe('jobView of the example', () => {
  it('is data the API would take', () => {
    expect(JobStart.safeParse(exampleJob).success).toBe(true);
    for (const reading of exampleSheet().readings) {
      const { seq: _s, jobId: _j, receivedAt: _r, deviceId: _d, ...sent } = reading;
      expect(NewReading.safeParse(sent).error?.issues ?? []).toEqual([]);
    }
  });

  it('counts 43 of 56 pieces made', () => {
    expect(view.progress).toMatchObject({ made: 43, of: 56 });
  });

  it('finds the liner bores where they were read', () => {
    expect(cellOf('L1', '1').size!.valuePm).toBe(18_007 * um);
    expect(cellOf('L8', '1').verdict).toMatchObject({ state: 'near', side: 'top' });
    expect(cellOf('L6', '1').verdict).toMatchObject({ state: 'near', side: 'bottom' });
    expect(cellOf('L1', '1').verdict?.state).toBe('inside');
  });

  it('pairs six pistons so that the worst pair is one micrometre from the aim', () => {
    const pairs = fit.pairs.map((p) => [
      markOf(p.internalPieceId),
      markOf(p.externalPieceId),
      Math.round(p.clearancePm / um),
      p.verdict.state,
    ]);
    expect(pairs).toEqual([
      ['L1', 'P1', 10, 'inside'],
      ['L2', 'P2', 10, 'inside'],
      ['L3', 'P6', 10, 'inside'],
      ['L4', 'P4', 10, 'inside'],
      ['L5', 'P5', 9, 'inside'],
      ['L6', 'P3', 11, 'inside'],
    ]);
  });

  it('says what to make the last two pistons to, from their own liners', () => {
    const targets = fit.toMake.map((t) => [
      markOf(t.pieceId),
      markOf(t.partnerId),
      t.targetPm / um,
      t.nowPm === null ? null : Math.round(t.nowPm / um),
    ]);
    expect(targets).toEqual([
      ['P7', 'L7', 18_000, 18_086],
      ['P8', 'L8', 18_006, null],
    ]);
    expect(view.next).toMatchObject({
      kind: 'make',
      target: { pieceId: pieceOf('P7').id },
      featureId: featureOf('4').id,
    });
  });

  it('leaves the held reading out of the size and asks about it', () => {
    const p5 = cellOf('P5', '4');
    expect(p5.readings).toHaveLength(5);
    expect(p5.size).toMatchObject({ count: 4, valuePm: 17_998_750_000 });
    expect(p5.readings.at(-1)).toMatchObject({ state: 'held', heldAs: 'thimble turn' });
  });

  it('has three things to decide: a held reading, a seat too large, a length too near to say', () => {
    const decisions = view.decisions.map((d) =>
      'pieceId' in d ? [d.kind, markOf(d.pieceId)] : [d.kind],
    );
    expect(decisions).toEqual([
      ['unsure', 'L6'],
      ['out', 'P4'],
      ['held', 'P5'],
    ]);
  });

  it('judges a piston by its own liner where the drawing leaves it open', () => {
    const p1 = cellOf('P1', '4');
    expect(p1.limitsFrom).toBe('partner');
    expect(p1.limits).toEqual({ lowerPm: 17_995 * um, upperPm: 17_999 * um });
    expect(p1.verdict?.state).toBe('inside');
    expect(cellOf('P7', '4').verdict).toMatchObject({ state: 'to cut', side: 'top' });
  });

  it('sees the crank webs grow since the insert was changed, and counts what is left', () => {
    const run = view.runs[0]!;
    expect(run.points).toHaveLength(11);
    expect(run.points.filter((point) => point.earlier)).toHaveLength(4);
    expect(run.drift?.kind).toBe('line');
    if (run.drift?.kind !== 'line') return;
    // Least squares by hand over W5 to W11: sizes -21 -20 -17 -16 -14 -11 -10 µm; Sxx = 28, Sxy = 54.
    expect(run.drift.slopeMmPerPiece).toBeCloseTo(0.054 / 28, 12);
    expect(run.drift.pieces).toBe(7);
    expect(run.nextPiece?.mark).toBe('W12');
    expect(run.piecesLeft).toBe(3);
    // A radius dial of 0.010 a division moves the diameter by 0.020 at a time.
    expect(run.offset!.onDiameterPm).toBe(-20 * um);
    expect(run.offset!.onDiameterPm).toBe(2 * run.offset!.onDialPm);
    expect(run.offset!.restartPm).toBeGreaterThan(run.limits.lowerPm!);
  });
});

describe('jobView after a correction', () => {
  it('flags a final pair when a reading of it is struck, and does not change what was recorded', () => {
    const sheet = exampleSheet();
    const [l1, p1] = [pieceOf('L1'), pieceOf('P1')];
    const reading = sheet.readings.find((r) => r.pieceId === p1.id && r.text === '17.998')!;
    const final: JobSheet = {
      ...sheet,
      pairs: [
        {
          id: 'pair',
          version: 1,
          createdAt: '2026-03-14T11:00:00Z',
          struckAt: null,
          jobId: sheet.job.id,
          fitId: fit.fit.id,
          internalPieceId: l1.id,
          externalPieceId: p1.id,
          state: 'final',
          mark: '1',
          clearancePm: 10 * um,
          uncertaintyPm: um,
          decidedAt: '2026-03-14T11:00:00Z',
          personId: null,
        },
      ],
    };
    expect(jobView(final).decisions.filter((d) => d.kind === 'pair changed')).toEqual([]);
    const struck = {
      ...final,
      corrections: [correctionOf(0, { kind: 'void', readingId: reading.id, seq: 5000 })],
    };
    const after = jobView(struck);
    expect(after.decisions).toContainEqual({
      kind: 'pair changed',
      pairId: 'pair',
      fitId: fit.fit.id,
    });
    expect(after.fits[0]!.pairs[0]).toMatchObject({ state: 'final', changedSince: true });
    expect(after.fits[0]!.pairs[0]!.pair!.clearancePm).toBe(10 * um);
  });

  it('reads the size after a cut from the readings after it only', () => {
    const sheet = exampleUncut();
    const p7 = pieceOf('P7');
    const last = sheet.readings.filter((r) => r.pieceId === p7.id).at(-1)!;
    const cut = {
      id: 'cut',
      version: 1,
      createdAt: '2026-03-14T11:00:00Z',
      struckAt: null,
      jobId: sheet.job.id,
      pieceId: p7.id,
      featureId: featureOf('4').id,
      ordinal: 1,
      lastReadingId: last.id,
      spring: false,
      askedPm: 80 * um,
      beforePm: 18_086 * um,
      afterPm: null,
      tool: '',
    };
    const cutCell = jobView({ ...sheet, cuts: [cut] }).cell(p7.id, featureOf('4').id);
    expect(cutCell.size).toBeNull();
    expect(cutCell.earlier).toHaveLength(3);
    const again = { ...last, id: 'after', seq: last.seq + 1, text: '18.000', valuePm: 18_000 * um };
    const measured = jobView({ ...sheet, cuts: [cut], readings: [...sheet.readings, again] });
    expect(measured.cell(p7.id, featureOf('4').id).size?.valuePm).toBe(18_000 * um);
    expect(measured.fits[0]!.pairs.map((p) => markOf(p.externalPieceId))).toContain('P7');
  });

  it('learns how well a gauge repeats from the readings between two cuts, never across one', () => {
    const sheet = exampleUncut();
    const p7 = pieceOf('P7');
    const last = sheet.readings.filter((r) => r.pieceId === p7.id).at(-1)!;
    const before = jobView(sheet).cells.history.get(last.gaugeId)!;
    const cuts = [1, 2, 3].map((n) => ({
      ...aCut(n, { jobId: sheet.job.id, pieceId: p7.id, featureId: featureOf('4').id }),
      lastReadingId: n === 1 ? last.id : `after ${n - 1}`,
    }));
    const readings = [1, 2].map((n) => ({
      ...last,
      id: `after ${n}`,
      seq: last.seq + n,
      valuePm: (18_086 - 20 * n) * um,
    }));
    const after = jobView({ ...sheet, cuts, readings: [...sheet.readings, ...readings] });
    expect(after.cells.history.get(last.gaugeId)).toEqual(before);
  });
});
