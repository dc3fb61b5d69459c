import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { exampleSheet } from './example-sheet';
import { mm, um } from './make';
import { smallRun } from './small-run';

/** The run of the example with other boss sizes, whole micrometres from 12 mm. */
function runOf(webs: readonly number[]) {
  const sheet = exampleSheet();
  const boss = sheet.features.find(({ balloon }) => balloon === '9')!;
  const ordinal = (pieceId: string) => sheet.pieces.find(({ id }) => id === pieceId)!.ordinal;
  const readings = sheet.readings
    .filter((reading) => reading.featureId === boss.id && ordinal(reading.pieceId) <= webs.length)
    .map((reading) => ({
      ...reading,
      valuePm: 12 * mm + webs[ordinal(reading.pieceId) - 1]! * um,
    }));
  // A fine dial, so that whole divisions hide nothing.
  const runs = sheet.runs.map((run) => ({ ...run, divisionPm: um / 10 }));
  return jobView({ ...sheet, readings, runs, runEvents: [] }).runs[0]!;
}

describe('runView', () => {
  it('puts the size back near the far limit, whichever way it drifts', () => {
    const growing = runOf([-20, -18.5, -16, -14.5, -12, -10.5, -8, -6.5]);
    const shrinking = runOf([-7, -8.5, -11, -12.5, -15, -16.5, -19, -20.5]);
    expect(growing.offset!.onDiameterPm).toBeLessThan(0);
    expect(shrinking.offset!.onDiameterPm).toBeGreaterThan(0);
    for (const { offset, limits } of [growing, shrinking]) {
      expect(offset!.restartPm).toBeGreaterThan(limits.lowerPm!);
      expect(offset!.restartPm).toBeLessThan(limits.upperPm!);
    }
  });

  it('restarts inside the far limit by three scatters and the guard of a size, to one step of the dial', () => {
    const { drift, offset, limits, points, run } = runOf([
      -20, -18.5, -16, -14.5, -12, -10.5, -8, -6.5,
    ]);
    const scatterPm = (drift as { scatterMm: number }).scatterMm * mm;
    const marginPm = 3 * scatterPm + 1.65 * points.at(-1)!.size.standardPm; // D26
    const overPm = offset!.restartPm - (limits.lowerPm! + marginPm);
    expect(overPm).toBeGreaterThanOrEqual(-1);
    expect(overPm).toBeLessThan(2 * run.divisionPm + 1);
  });

  describe('puts no offset forward', () => {
    const drifting = [-9, -7, -6, -4, -3, -1, 0, 2];
    const limits = { lowerPm: -10 * um, upperPm: 10 * um };
    const small = { feature: limits, run: { dial: 'diameter', divisionPm: um } as const };

    it('where the batch is made before the drift meets the limit', () => {
      const found = smallRun({ ...small, sizes: drifting, of: 10 });
      expect(found.piecesLeft).toBeGreaterThan(1);
      expect(found).toMatchObject({ offset: null, noOffset: null });
      expect(smallRun({ ...small, sizes: drifting, of: 30 }).offset!.onDiameterPm).toBeLessThan(0);
    });

    it('of less than a division of the dial', () => {
      const run = { dial: 'diameter', divisionPm: 50 * um } as const;
      const found = smallRun({ ...small, run, sizes: drifting, of: 30 });
      expect(found).toMatchObject({ offset: null, noOffset: 'less than a division' });
    });

    it('where there is no second limit to begin anew at', () => {
      const feature = { ...limits, lowerPm: null };
      const found = smallRun({ ...small, feature, sizes: drifting, of: 30 });
      expect(found).toMatchObject({ offset: null, noOffset: 'one limit' });
    });

    it('where the scatter leaves no room between the limits', () => {
      const feature = { lowerPm: -5 * um, upperPm: 5 * um };
      const sizes = [-9, -1, -7, 2, -4, 5, -1, 8, 0, 9];
      const run = { dial: 'diameter', divisionPm: um / 10 } as const;
      const found = smallRun({ feature, run, sizes, of: 30 });
      expect(found).toMatchObject({ offset: null, noOffset: 'no room' });
    });
  });

  it('begins afresh at once where an event that starts afresh comes after the last piece', () => {
    const sizes = [-20, -18.5, -16, -14.5, -12, -10.5, -8, -6.5];
    const after = (kind: 'insert changed' | 'break', afterOrdinal: number) =>
      smallRun({ sizes, events: [{ kind, afterOrdinal }], of: 20 });
    expect(after('break', 8).drift).toMatchObject({ kind: 'line', pieces: 8 });
    const fresh = after('insert changed', 8);
    expect(fresh.drift).toBeNull();
    expect(fresh.points.every(({ earlier }) => earlier)).toBe(true);
    expect(fresh).toMatchObject({ piecesLeft: null, actAfter: null, offset: null });
    expect(after('insert changed', 7).drift).toMatchObject({ kind: 'too-little', pieces: 1 });
  });

  it('gives no offset and no count to a run that does not drift', () => {
    const steady = runOf([-12, -14, -13, -12, -14, -13, -12, -14]);
    expect(steady.drift?.kind).toBe('line');
    expect(steady.piecesLeft).toBeNull();
    expect(steady.offset).toBeNull();
  });

  it('says to act now when the band is already at the limit, never fewer than none', () => {
    const late = runOf([-14, -12, -10, -8, -6, -4, -2, 0.5]);
    expect(late.piecesLeft).toBe(0);
  });
});
