import { MathsInputError } from '../check';

export type OvalFit = {
  meanMm: number;
  /** Largest less smallest diameter of the fitted oval, mm, never negative. */
  ovalityMm: number;
  /** Direction of the largest diameter, degrees in [0, 180); means nothing when ovality is 0. */
  largeAxisDeg: number;
  /** Largest less smallest diameter as read, mm: what a glance at the readings shows. */
  seenMm: number;
  /** Largest departure of a reading from the fitted oval, mm; always 0 with three directions. */
  residualMm: number;
  /** Largest standard uncertainty of the ovality, in units of that of one reading. */
  uncertaintyGain: number;
};

/**
 * The oval behind diameters read in three or more directions, by least squares:
 * the true ovality and its axis even when no direction lies on an axis.
 *
 * d(t) = D + p cos 2t + q sin 2t; ovality = 2 sqrt(p^2 + q^2); large axis = atan2(q, p) / 2.
 *
 * Directions in degrees; two that differ by a multiple of 180 are one. Three
 * different directions always have one answer, but directions bunched together
 * make it worthless: `uncertaintyGain` says how much of the reading's doubt it
 * carries (1.63 for 0, 60 and 120). Lobes other than two are not looked for.
 *
 * Cost: O(n). The three normal equations are solved after the mean diameter is
 * taken off. Source: least squares of the form above, by definition.
 *
 * @throws {MathsInputError} `oval-from-directions/shape`, `oval-from-directions/value`,
 *   `oval-from-directions/too-few-directions`, `oval-from-directions/bunched`
 *
 * @example
 * ovalFromDirections({ directionsDeg: [0, 45, 90], diametersMm: [25, 25.006, 25] });
 * // ovalityMm 0.012, largeAxisDeg 45, seenMm 0.006
 */
export function ovalFromDirections(readings: {
  directionsDeg: readonly number[];
  diametersMm: readonly number[];
}): OvalFit {
  requireReadings(readings);
  const { directionsDeg, diametersMm } = readings;
  const base = diametersMm.reduce((sum, value) => sum + value, 0) / diametersMm.length;
  const terms = directionsDeg.map((deg) => {
    const twice = (deg * Math.PI) / 90;
    return [1, Math.cos(twice), Math.sin(twice)] as const;
  });
  const inverse = invertedNormal(terms);
  const right = [0, 1, 2].map((k) =>
    terms.reduce((sum, term, i) => sum + term[k]! * (diametersMm[i]! - base), 0),
  );
  const [offset, p, q] = inverse.map((row) => dot(row, right)) as [number, number, number];
  const axis = (Math.atan2(q, p) * 90) / Math.PI;
  const departures = terms.map((term, i) => diametersMm[i]! - base - dot(term, [offset, p, q]));
  const [pp, pq, qq] = [inverse[1]![1]!, inverse[1]![2]!, inverse[2]![2]!];
  const worstVariance = (pp + qq) / 2 + Math.hypot((pp - qq) / 2, pq);
  return {
    meanMm: base + offset,
    ovalityMm: 2 * Math.hypot(p, q),
    largeAxisDeg: ((axis % 180) + 180) % 180,
    seenMm: Math.max(...diametersMm) - Math.min(...diametersMm),
    residualMm: Math.max(...departures.map(Math.abs)),
    uncertaintyGain: 2 * Math.sqrt(worstVariance),
  };
}

/** Inverse of the 3 x 3 normal matrix by cofactors. */
function invertedNormal(terms: readonly (readonly number[])[]): number[][] {
  const n = [0, 1, 2].map((k) =>
    [0, 1, 2].map((l) => terms.reduce((sum, term) => sum + term[k]! * term[l]!, 0)),
  );
  const minor = (k: number, l: number): number => {
    const [a, b] = [(k + 1) % 3, (k + 2) % 3];
    const [c, d] = [(l + 1) % 3, (l + 2) % 3];
    return n[a]![c]! * n[b]![d]! - n[a]![d]! * n[b]![c]!;
  };
  const determinant = [0, 1, 2].reduce((sum, l) => sum + n[0]![l]! * minor(0, l), 0);
  if (!(determinant > 1e-9)) {
    throw refuse('bunched', 'directions spread over the circle, got directions bunched together');
  }
  return [0, 1, 2].map((k) => [0, 1, 2].map((l) => minor(l, k) / determinant));
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * b[i]!, 0);
}

function requireReadings(readings: {
  directionsDeg: readonly number[];
  diametersMm: readonly number[];
}): void {
  const { directionsDeg, diametersMm } = readings;
  const n = directionsDeg.length;
  if (diametersMm.length !== n) {
    throw refuse('shape', `as many diameters as directions, got ${diametersMm.length} and ${n}`);
  }
  directionsDeg.forEach((deg, i) => {
    const diameter = diametersMm[i]!;
    if (Number.isFinite(deg) && Number.isFinite(diameter) && diameter > 0) return;
    throw refuse('value', `finite directions and diameters above zero, got ${diameter} at ${deg}`);
  });
  const different = new Set(directionsDeg.map((deg) => ((deg % 180) + 180) % 180)).size;
  if (different < 3) {
    throw refuse('too-few-directions', `three different directions, got ${different}`);
  }
}

function refuse(reason: string, what: string): MathsInputError {
  return new MathsInputError(
    `oval-from-directions/${reason}`,
    `ovalFromDirections requires ${what}`,
  );
}
