import { MathsInputError } from '../check';

/** Largest and smallest of a diameter, inches. */
export type InchLimits = { maxIn: number; minIn: number };

export type UnifiedThread = {
  basicPitchDiameterIn: number;
  basicMinorIn: number;
  /** Tolerance of the pitch diameter in class 2A, from which the others follow. */
  pitchTolerance2AIn: number;
  /** Gap of classes 1A and 2A below the basic size. */
  allowanceIn: number;
  external: { major: InchLimits; pitch: InchLimits };
  /** Class 3B has a minor tolerance of its own, which is left out. */
  internal: { minor?: InchLimits; pitch: InchLimits };
};

const externalFactor = { '1A': 1.5, '2A': 1, '3A': 0.75 } as const;
const internalFactor = { '1B': 1.95, '2B': 1.3, '3B': 0.975 } as const;

/**
 * Limits of a Unified inch thread, inches, not rounded.
 *
 * P = 1/tpi; Td2(2A) = 0.0015 D^(1/3) + 0.0015 sqrt LE + 0.015 P^(2/3), length of
 * engagement LE = D for the coarse and fine series and 9P for others; other
 * classes by a factor. Allowance 0.3 Td2(2A) for 1A and 2A. Major tolerance
 * 0.060 P^(2/3), 0.090 for 1A. Minor tolerance of 1B and 2B 0.25P - 0.4P^2 from
 * D = 0.25; below that 0.05 P^(2/3) + 0.03 P/D - 0.002, held between
 * 0.25P - 0.4P^2 and 0.394P.
 *
 * Printed tables round to 0.0001 inch before the next limit is formed and may
 * differ by one in the last place. Number sizes: D = 0.060 + 0.013 N.
 * Limits: four threads an inch and finer; of class 3B the pitch diameter only. Source: [asme-b1-1].
 *
 * @throws {MathsInputError} `unified-thread/size`
 *
 * @example
 * unifiedThread({ majorIn: 0.25, tpi: 20, series: 'UNC' }).external.pitch; // 0.21640 to 0.21267
 */
export function unifiedThread(thread: {
  majorIn: number;
  tpi: number;
  /** Coarse and fine series have their major diameter as length of engagement. */
  series: 'UNC' | 'UNF' | 'other';
  externalClass?: keyof typeof externalFactor;
  internalClass?: keyof typeof internalFactor;
}): UnifiedThread {
  const { majorIn: D, tpi, series, externalClass = '2A', internalClass = '2B' } = thread;
  const P = 1 / tpi;
  const heightIn = (Math.sqrt(3) / 2) * P;
  const basicMinorIn = D - 1.25 * heightIn;
  if (!(tpi >= 4 && tpi < Infinity && D < Infinity && basicMinorIn > 0)) {
    throw new MathsInputError(
      'unified-thread/size',
      `unifiedThread requires at least 4 threads an inch and a core, got ${D} - ${tpi}`,
    );
  }
  const engagementIn = series === 'other' ? 9 * P : D;
  const pitchTolerance2AIn =
    0.0015 * Math.cbrt(D) + 0.0015 * Math.sqrt(engagementIn) + 0.015 * Math.cbrt(P) ** 2;
  const allowanceIn = 0.3 * pitchTolerance2AIn;
  const basicPitchDiameterIn = D - 0.75 * heightIn;
  const gap = externalClass === '3A' ? 0 : allowanceIn;
  const majorTolerance = (externalClass === '1A' ? 0.09 : 0.06) * Math.cbrt(P) ** 2;
  const down = (maxIn: number, tolerance: number) => ({ maxIn, minIn: maxIn - tolerance });
  const up = (minIn: number, tolerance: number) => ({ maxIn: minIn + tolerance, minIn });
  return {
    basicPitchDiameterIn,
    basicMinorIn,
    pitchTolerance2AIn,
    allowanceIn,
    external: {
      major: down(D - gap, majorTolerance),
      pitch: down(basicPitchDiameterIn - gap, externalFactor[externalClass] * pitchTolerance2AIn),
    },
    internal: {
      ...(internalClass !== '3B' && { minor: up(basicMinorIn, minorTolerance(D, P)) }),
      pitch: up(basicPitchDiameterIn, internalFactor[internalClass] * pitchTolerance2AIn),
    },
  };
}

function minorTolerance(D: number, P: number): number {
  const coarse = 0.25 * P - 0.4 * P * P;
  if (D >= 0.25) return coarse;
  const small = 0.05 * Math.cbrt(P) ** 2 + (0.03 * P) / D - 0.002;
  return Math.min(Math.max(small, coarse), 0.394 * P);
}
