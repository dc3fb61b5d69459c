import { MathsInputError } from '../check';

export type BlindHole = {
  /** Length of the drill point, mm. */
  pointMm: number;
  /** How deep the drill must go at full diameter, mm. */
  fullDiameterDepthMm: number;
  /** To the tip, mm. */
  totalDepthMm: number;
  /** Metal left beyond the tip, mm; below zero the drill breaks through. */
  wallLeftMm: number;
  wallIsEnough: boolean;
  /** Deepest full thread that leaves the least wall, mm. */
  deepestFullThreadMm: number;
};

/**
 * Depth of a blind tapped hole and the wall it leaves.
 *
 * point = (drill/2)/tan(angle/2); full-diameter depth = full thread + runout;
 * wall = stock - depth - point. The runout is counted in pitches: about 3 for a
 * taper tap and 2 for a plug tap (common practice, no source). Lengths in mm,
 * the whole angle of the point in degrees.
 *
 * Source: geometry.
 *
 * @throws {MathsInputError} `blind-hole/size`, `blind-hole/angle`
 *
 * @example
 * blindHole({ drillMm: 5, pitchMm: 1, fullThreadMm: 9, runoutPitches: 3, pointAngleDeg: 118,
 *   stockMm: 16, leastWallMm: 1 }); // totalDepthMm 13.50, wallLeftMm 2.50
 */
export function blindHole(hole: {
  drillMm: number;
  pitchMm: number;
  fullThreadMm: number;
  runoutPitches: number;
  pointAngleDeg: number;
  stockMm: number;
  leastWallMm: number;
}): BlindHole {
  const { drillMm, pitchMm, fullThreadMm, runoutPitches, pointAngleDeg, stockMm } = hole;
  const { leastWallMm } = hole;
  const above = [drillMm, pitchMm, stockMm].every((size) => size > 0 && size < Infinity);
  const fromZero = [fullThreadMm, runoutPitches, leastWallMm].every((n) => n >= 0 && n < Infinity);
  if (!above || !fromZero) {
    throw new MathsInputError(
      'blind-hole/size',
      `blindHole requires sizes above zero, got ${JSON.stringify(hole)}`,
    );
  }
  if (!(pointAngleDeg > 0 && pointAngleDeg <= 180)) {
    throw new MathsInputError(
      'blind-hole/angle',
      `blindHole requires a point of more than 0 to 180 degrees, got ${pointAngleDeg}`,
    );
  }
  const pointMm = drillMm / 2 / Math.tan((pointAngleDeg * Math.PI) / 360);
  const runoutMm = runoutPitches * pitchMm;
  const fullDiameterDepthMm = fullThreadMm + runoutMm;
  const totalDepthMm = fullDiameterDepthMm + pointMm;
  const wallLeftMm = stockMm - totalDepthMm;
  return {
    pointMm,
    fullDiameterDepthMm,
    totalDepthMm,
    wallLeftMm,
    wallIsEnough: wallLeftMm >= leastWallMm,
    deepestFullThreadMm: stockMm - leastWallMm - pointMm - runoutMm,
  };
}
