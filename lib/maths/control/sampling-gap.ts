import { refuse } from './guards';

export type SamplingGap = {
  /** Mean number of pieces from one stop to the next. */
  meanGap: number;
  /** Take a sample every so many pieces: a sixth of that, rounded down, at least 1. */
  samplePieces: number;
};

/**
 * How often to sample a batch that runs by zones: six samples between stops.
 *
 * The stops are the ordinals of the pieces at which the machine was last adjusted. Limits: two stops
 * say little; go on averaging. Cost: O(1). Source: [shainin] (six samples, from memory).
 *
 * @throws {MathsInputError} `sampling-gap/too-few`, `sampling-gap/not-increasing`
 *
 * @example
 * samplingGap([40, 88, 130]); // { meanGap: 45, samplePieces: 7 }
 */
export function samplingGap(stopsAtPiece: readonly number[]): SamplingGap {
  const count = stopsAtPiece.length;
  if (count < 2) throw refuse('samplingGap', 'too-few', `at least 2 stops, got ${count}`);
  stopsAtPiece.forEach((stop, i) => {
    if (!(Number.isSafeInteger(stop) && (i === 0 || stop > stopsAtPiece[i - 1]!))) {
      const got = `${stop} at index ${i}`;
      throw refuse('samplingGap', 'not-increasing', `whole increasing stops, got ${got}`);
    }
  });
  const meanGap = (stopsAtPiece[count - 1]! - stopsAtPiece[0]!) / (count - 1);
  return { meanGap, samplePieces: Math.max(1, Math.floor(meanGap / 6)) };
}
