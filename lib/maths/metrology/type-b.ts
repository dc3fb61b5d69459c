import { MathsInputError } from '../check';
import { studentTQuantile } from '../distributions/student-t-quantile';

/**
 * Standard uncertainties that do not come from repeats (JCGM 100 4.3): each takes what is known and
 * gives u in the same unit. All refuse amounts that are not finite or are below zero.
 * Source: [jcgm-100] 4.3, G.4.2.
 */

/** Anywhere within +-a, no place likelier than another: a/sqrt 3. */
export function fromRectangular(halfWidth: number): number {
  return amount('fromRectangular', halfWidth) / Math.sqrt(3);
}

/** Within +-a, likeliest in the middle and falling off straight: a/sqrt 6. */
export function fromTriangular(halfWidth: number): number {
  return amount('fromTriangular', halfWidth) / Math.sqrt(6);
}

/** Swinging like a sine between -a and +a, as a room's temperature may: a/sqrt 2. */
export function fromArcsine(amplitude: number): number {
  return amount('fromArcsine', amplitude) / Math.SQRT2;
}

/** One step of the display or graduation, q: q/sqrt 12. */
export function fromResolution(step: number): number {
  return amount('fromResolution', step) / Math.sqrt(12);
}

/** A certificate's expanded uncertainty with its coverage factor: U/k. */
export function fromCertificate(expanded: number, factor: number): number {
  if (!(factor > 0 && factor < Infinity)) {
    throw new MathsInputError(
      'type-b/factor',
      `fromCertificate requires a coverage factor above zero, got ${factor}`,
    );
  }
  return amount('fromCertificate', expanded) / factor;
}

/** A half-width said to hold with a confidence, with its degrees of freedom (infinite: normal). */
export function fromConfidence(halfWidth: number, confidence: number, degrees = Infinity): number {
  if (!(confidence > 0 && confidence < 1)) {
    throw new MathsInputError(
      'type-b/confidence',
      `fromConfidence requires a confidence above 0 and below 1, got ${confidence}`,
    );
  }
  return amount('fromConfidence', halfWidth) / studentTQuantile((1 + confidence) / 2, degrees);
}

/** Degrees of freedom of a u that may itself be wrong by a part r of it: 1/(2 r^2). */
export function degreesFromDoubt(part: number): number {
  if (!(part > 0)) {
    throw new MathsInputError(
      'type-b/doubt',
      `degreesFromDoubt requires a part above zero, got ${part}`,
    );
  }
  return 1 / (2 * part * part);
}

function amount(caller: string, size: number): number {
  if (size >= 0 && size < Infinity) return size;
  throw new MathsInputError(
    'type-b/amount',
    `${caller} requires an amount not below zero, got ${size}`,
  );
}
