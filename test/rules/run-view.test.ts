import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { exampleSheet } from './example-sheet';
import { mm, um } from './make';

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
