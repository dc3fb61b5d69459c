import { MathsInputError } from '../check';

export type BaThread = {
  pitchMm: number;
  majorMm: number;
  depthMm: number;
  effectiveMm: number;
  minorMm: number;
  flankAngleDeg: 47.5;
};

/**
 * Sizes of a British Association thread from its number, 0 to 16, mm.
 *
 * P = 0.9^N, d = 6 P^1.2 with the unrounded pitch, each to two significant
 * figures; depth 0.6 P, effective d - 0.6 P, minor d - 1.2 P. BS 93 rounds the
 * effective and minor diameters to 0.005 mm, which is not done here.
 *
 * Source: [bs-93].
 *
 * @throws {MathsInputError} `ba-thread/number`
 *
 * @example
 * baThread(2); // pitchMm 0.81, majorMm 4.7, minorMm 3.728
 */
export function baThread(number: number): BaThread {
  if (!(Number.isInteger(number) && number >= 0 && number <= 16)) {
    throw new MathsInputError(
      'ba-thread/number',
      `baThread requires a whole number from 0 to 16, got ${number}`,
    );
  }
  const pitchMm = Number((0.9 ** number).toPrecision(2));
  const majorMm = Number((6 * 0.9 ** (1.2 * number)).toPrecision(2));
  return {
    pitchMm,
    majorMm,
    depthMm: 0.6 * pitchMm,
    effectiveMm: majorMm - 0.6 * pitchMm,
    minorMm: majorMm - 1.2 * pitchMm,
    flankAngleDeg: 47.5,
  };
}
