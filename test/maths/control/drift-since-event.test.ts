import { describe, expect, it } from 'vitest';
import {
  driftSinceEvent,
  type DriftAhead,
  type DriftInput,
  type DriftLine,
} from '@/lib/maths/control/drift-since-event';
import { expectEachNear, expectNear } from './near';

// A run with the insert turned before piece 5; sizes off 12.000 in whole micrometres. Constructed.
// Figures worked apart with numpy and scipy.stats.t (polyfit by hand, Fieller by its quadratic).
const run: DriftInput = {
  ordinals: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11],
  sizesMm: [-9, -8, -5, -3, -21, -20, -17, -16, -14, -11, -10].map((um) => um / 1000),
  lowerMm: -0.027,
  upperMm: 0,
  confidence: 0.95,
  eventsBefore: [4],
};

describe('driftSinceEvent', () => {
  it('draws the line through the pieces since the last event only', () => {
    const drift = lineOf(run);
    expect([drift.firstIndex, drift.pieces]).toEqual([4, 7]);
    expectNear(drift.slopeMmPerPiece, 0.0019285714, 1e-9);
    expectNear(drift.scatterMm, 0.0005606119, 1e-9);
    expectNear(drift.slopeIntervalMmPerPiece.low, 0.0016562294, 1e-9);
    expectNear(drift.slopeIntervalMmPerPiece.high, 0.0022009135, 1e-9);
  });

  it('says between which pieces the limit is met, for a single piece and for the line alone', () => {
    const { crossing, lineCrossing, side, limitMm } = meetingOf(run);
    expect([side, limitMm]).toEqual(['upper', 0]);
    expectEachNear(
      [crossing.first, crossing.best, crossing.last],
      [14.8225366793, 16.0740740741, 17.6541821067],
      1e-8,
    );
    expectEachNear(
      [lineCrossing.first, lineCrossing.best, lineCrossing.last],
      [15.0405152641, 16.0740740741, 17.4362035219],
      1e-8,
    );
  });

  it('meets the limit where its own band does', () => {
    const drift = lineOf(run);
    const { crossing } = meetingOf(run);
    expectNear(drift.bandAtMm(crossing.first).newReading.high, 0, 1e-12);
    expectNear(drift.bandAtMm(crossing.best).line, 0, 1e-12);
    expectNear(drift.bandAtMm(crossing.last).newReading.low, 0, 1e-12);
  });

  it('counts the pieces left by the line and with confidence', () => {
    // One-sided 95 %: 14 is sure to 0.00224 below the limit, 15 to 0.00015 below, 16 is not.
    const ahead = meetingOf(run);
    expect(ahead.lastPieceLineInside).toBe(16);
    expect(ahead.piecesLeftByLine).toBe(5);
    expect(ahead.piecesLeftWithConfidence).toBe(4);
  });

  it('heads for the lower limit when the size shrinks, with the same counts', () => {
    const mirrored = {
      ...run,
      sizesMm: run.sizesMm.map((size) => -size),
      lowerMm: 0,
      upperMm: 0.027,
    };
    const ahead = meetingOf(mirrored);
    expect([ahead.side, ahead.piecesLeftByLine, ahead.piecesLeftWithConfidence]).toEqual([
      'lower',
      5,
      4,
    ]);
  });

  it('looks at the whole run when there was no event', () => {
    const { eventsBefore: _, ...whole } = run;
    const drift = lineOf(whole);
    expect([drift.firstIndex, drift.pieces]).toEqual([0, 11]);
  });

  it('takes the last event, in whatever order they are told', () => {
    expect(lineOf({ ...run, eventsBefore: [4, 2] }).firstIndex).toBe(4);
  });

  it('lets pieces be missing', () => {
    const kept = [0, 1, 3, 4, 6];
    const gappy = {
      ...run,
      eventsBefore: [],
      ordinals: kept.map((i) => run.ordinals[4 + i]!),
      sizesMm: kept.map((i) => 0.002 * i - 0.02 + (i % 2) * 0.0001),
    };
    expectNear(lineOf(gappy).slopeMmPerPiece, 0.002, 5e-5);
  });

  it('gives no count when the drift cannot be told from scatter', () => {
    // Constructed: up and down by two micrometres, leaning up by a hair.
    const level = {
      ...run,
      eventsBefore: [],
      sizesMm: [2, -2, 2, -2, 2, -2, 2, -2, 2, -2, 3].map((um) => um / 1000 - 0.01),
    };
    const drift = lineOf(level);
    expect(drift.g).toBeGreaterThanOrEqual(1);
    expect(drift.ahead).toEqual({ kind: 'no-drift', limitMm: 0 });
  });

  it('names no limit ahead for a line that is quite level', () => {
    const level = { ...run, eventsBefore: [], ordinals: [1, 2, 3, 4, 5], sizesMm: [0, 1, 2, 1, 0] };
    const drift = lineOf({ ...level, lowerMm: -9, upperMm: 9 });
    expect([drift.slopeMmPerPiece, drift.g]).toEqual([0, Infinity]);
    expect(drift.ahead).toEqual({ kind: 'no-drift' });
  });

  it('says so when it drifts towards a side that has no limit', () => {
    const { upperMm: _, ...open } = run;
    expect(lineOf(open).ahead).toEqual({ kind: 'no-limit' });
  });

  it('counts no pieces when the line has passed its limit', () => {
    const ahead = meetingOf({ ...run, upperMm: -0.012 });
    expect(ahead.lastPieceLineInside).toBeLessThan(11);
    expect([ahead.piecesLeftByLine, ahead.piecesLeftWithConfidence]).toEqual([0, 0]);
  });

  it('draws no line through fewer than five pieces', () => {
    expect(driftSinceEvent({ ...run, eventsBefore: [7] })).toEqual({
      kind: 'too-little',
      reason: 'too-few-pieces',
      firstIndex: 7,
      pieces: 4,
    });
  });

  it('draws no line through fewer than three different sizes', () => {
    const coarse = { ...run, sizesMm: run.sizesMm.map((_, i) => (i < 8 ? -0.01 : -0.005)) };
    expect(driftSinceEvent(coarse)).toMatchObject({ kind: 'too-little', reason: 'too-few-sizes' });
  });

  it.each<[string, Partial<DriftInput>, string]>([
    ['a size without an ordinal', { ordinals: [1, 2] }, 'one size for each ordinal, got 2 and 11'],
    [
      'ordinals out of order',
      { ordinals: [1, 2, 3, 4, 5, 6, 7, 8, 9, 11, 10] },
      'whole increasing ordinals, got 10 at index 10',
    ],
    [
      'the same piece twice',
      { ordinals: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 10] },
      'whole increasing ordinals, got 10 at index 10',
    ],
    [
      'half a piece',
      { ordinals: [1, 2, 3, 4, 5, 6, 7, 8, 9, 9.5, 10] },
      'whole increasing ordinals, got 9.5 at index 9',
    ],
    ['a size that is no number', { sizesMm: [...run.sizesMm.slice(1), NaN] }, 'NaN at index 10'],
    ['limits the wrong way round', { lowerMm: 1 }, 'a lower limit below the upper, got 1 and 0'],
    ['a limit that is no number', { upperMm: NaN }, 'finite limits, got NaN'],
    ['a confidence of 95', { confidence: 95 }, 'a confidence between 0 and 1, got 95'],
    ['an event after the last piece', { eventsBefore: [11] }, 'events at whole indices'],
  ])('refuses %s', (_, broken, message) => {
    expect(() => driftSinceEvent({ ...run, ...broken })).toThrow(message);
  });
});

function lineOf(input: DriftInput): DriftLine {
  const drift = driftSinceEvent(input);
  if (drift.kind !== 'line') throw new Error(`no line: ${drift.reason}`);
  return drift;
}

function meetingOf(input: DriftInput): Extract<DriftAhead, { kind: 'meets' }> {
  const { ahead } = lineOf(input);
  if (ahead.kind !== 'meets') throw new Error(`no meeting: ${ahead.kind}`);
  return ahead;
}
