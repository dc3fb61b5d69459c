import { baThread } from './ba-thread';

/** Tolerances of a British Association thread, mm. */
export type BaTolerances = {
  externalClose: { majorMm: number; effectiveMm: number; minorMm: number };
  externalNormal: { majorMm: number; effectiveMm: number; minorMm: number };
  internal: { effectiveMm: number; minorMm: number };
};

/**
 * Tolerances of a British Association thread from its number, mm.
 *
 * Bolts, close: major 0.15 P, effective 0.08 P + 0.02, minor 0.16 P + 0.04;
 * normal: major 0.20 P, effective 0.10 P + 0.025, minor 0.20 P + 0.05.
 * Nuts: effective 0.12 P + 0.03, minor 0.375 P. Down from the basic size on
 * bolts, up on nuts. The plus of the nut's effective formula is damaged in the
 * copy that was read; minus would make it no tolerance at all at fine pitches.
 *
 * Source: [bs-93] annex B; bolts' effective from memory.
 *
 * @throws {MathsInputError} `ba-thread/number`
 *
 * @example
 * baTolerances(2).internal.effectiveMm; // 0.1272
 */
export function baTolerances(number: number): BaTolerances {
  const { pitchMm: P } = baThread(number);
  return {
    externalClose: {
      majorMm: 0.15 * P,
      effectiveMm: 0.08 * P + 0.02,
      minorMm: 0.16 * P + 0.04,
    },
    externalNormal: {
      majorMm: 0.2 * P,
      effectiveMm: 0.1 * P + 0.025,
      minorMm: 0.2 * P + 0.05,
    },
    internal: { effectiveMm: 0.12 * P + 0.03, minorMm: 0.375 * P },
  };
}
