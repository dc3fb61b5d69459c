import { MathsInputError } from '../check';

export type WhitworthThread = {
  pitchIn: number;
  depthIn: number;
  effectiveIn: number;
  coreIn: number;
  radiusIn: number;
};

/**
 * Basic sizes of a thread of Whitworth form, 55 degrees, inches: BSW, BSF, brass
 * and the model engineers' series of 32 and 40 threads an inch.
 *
 * P = 1/tpi; depth 0.640327 P; effective D - depth; core D - 2 depth;
 * radius of crest and root 0.137329 P. Source: [bs-84].
 *
 * @throws {MathsInputError} `whitworth-thread/size`
 *
 * @example
 * whitworthThread(0.25, 20).coreIn; // 0.18597
 */
export function whitworthThread(majorIn: number, tpi: number): WhitworthThread {
  const pitchIn = 1 / tpi;
  const depthIn = 0.640327 * pitchIn;
  const coreIn = majorIn - 2 * depthIn;
  if (!(tpi > 0 && tpi < Infinity && majorIn < Infinity && coreIn > 0)) {
    throw new MathsInputError(
      'whitworth-thread/size',
      `whitworthThread requires threads an inch above zero that leave a core, got ${majorIn} - ${tpi}`,
    );
  }
  const effectiveIn = majorIn - depthIn;
  return { pitchIn, depthIn, effectiveIn, coreIn, radiusIn: 0.137329 * pitchIn };
}
