import { MathsInputError } from '../check';

/**
 * Pitch diameter of a sixty-degree thread from a size over three wires.
 *
 * d2 = M - 3w + 0.866025 P; best wire P/(2 cos 30), which touches at the pitch
 * line; a wire from 0.505 P to 1.010 P rests on the flanks and stands out. The
 * lead angle is left out: it adds some micrometres to coarse or many-start
 * threads. Lengths in mm.
 *
 * Source: [machinerys-handbook-31]; the range of wires from memory.
 *
 * @throws {MathsInputError} `three-wires/size`, `three-wires/wire`
 *
 * @example
 * threeWires({ pitchMm: 1.5, wireMm: 0.866, overWiresMm: 10.295 }).pitchDiameterMm; // 8.99604
 */
export function threeWires(measured: { pitchMm: number; wireMm: number; overWiresMm: number }): {
  bestWireMm: number;
  pitchDiameterMm: number;
} {
  const { pitchMm, wireMm, overWiresMm } = measured;
  requireWire(pitchMm, wireMm);
  if (!(overWiresMm > 3 * wireMm && overWiresMm < Infinity)) {
    throw new MathsInputError(
      'three-wires/size',
      `threeWires requires a size over the wires of more than three wires, got ${overWiresMm}`,
    );
  }
  const bestWireMm = pitchMm / Math.sqrt(3);
  return { bestWireMm, pitchDiameterMm: overWiresMm - wiresOver(pitchMm, wireMm) };
}

/** What three wires stand above a pitch diameter, mm: 3w - 0.866025 P. */
export function wiresOver(pitchMm: number, wireMm: number): number {
  requireWire(pitchMm, wireMm);
  return 3 * wireMm - (Math.sqrt(3) / 2) * pitchMm;
}

function requireWire(pitchMm: number, wireMm: number): void {
  const fits = wireMm >= 0.505 * pitchMm && wireMm <= 1.01 * pitchMm;
  if (pitchMm > 0 && pitchMm < Infinity && fits) return;
  throw new MathsInputError(
    'three-wires/wire',
    `threeWires requires a wire from 0.505 to 1.010 pitches, got ${wireMm} at pitch ${pitchMm}`,
  );
}
