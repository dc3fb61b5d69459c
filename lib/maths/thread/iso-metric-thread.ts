import { MathsInputError } from '../check';

/** Basic sizes of an ISO metric thread, mm, not rounded; external and internal share them. */
export type IsoMetricThread = {
  /** Height of the sharp triangle. */
  heightMm: number;
  /** Pitch (effective) diameter d2 = D2. */
  pitchDiameterMm: number;
  /** Minor diameter of the internal thread D1. */
  minorInternalMm: number;
  /** Minor diameter of the external thread d3, with the rounded root. */
  minorExternalMm: number;
  stressAreaMm2: number;
};

/**
 * Basic sizes of an ISO metric thread from its major diameter and pitch.
 *
 * H = (sqrt 3/2) P; d2 = d - 3H/4; D1 = d - 5H/4; d3 = d - 17H/12;
 * stress area = (pi/4) ((d2 + d3)/2)^2. Lengths in mm; the standard gives
 * them to 0.001. Any pitch that leaves metal in the core: whether the pair of
 * sizes is a standard one (ISO 261) is not asked.
 *
 * Source: [iso-68-1], [iso-724], [iso-898-1] for the stress area.
 *
 * @throws {MathsInputError} `iso-metric-thread/size`
 *
 * @example
 * isoMetricThread(10, 1.5).pitchDiameterMm; // 9.025721
 */
export function isoMetricThread(majorMm: number, pitchMm: number): IsoMetricThread {
  const heightMm = (Math.sqrt(3) / 2) * pitchMm;
  const minorExternalMm = majorMm - (17 / 12) * heightMm;
  if (!(pitchMm > 0 && majorMm < Infinity && minorExternalMm > 0)) {
    throw new MathsInputError(
      'iso-metric-thread/size',
      `isoMetricThread requires a pitch above zero that leaves a core, got ${majorMm} x ${pitchMm}`,
    );
  }
  const pitchDiameterMm = majorMm - 0.75 * heightMm;
  return {
    heightMm,
    pitchDiameterMm,
    minorInternalMm: majorMm - 1.25 * heightMm,
    minorExternalMm,
    stressAreaMm2: (Math.PI / 4) * ((pitchDiameterMm + minorExternalMm) / 2) ** 2,
  };
}
