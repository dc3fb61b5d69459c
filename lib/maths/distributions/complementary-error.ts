/**
 * The complementary error function, erfc(x) = 2/sqrt(pi) * integral from x to infinity of exp(-t^2).
 *
 * Rational approximations on three intervals, relative error about 1e-16 on both tails; underflows
 * to 0 beyond 26.5. Cost: O(1). Source: [cody-1969].
 */
export function complementaryError(x: number): number {
  const size = Math.abs(x);
  if (size <= 0.46875) return 1 - nearZero(x);
  const tail = size <= 4 ? middle(size) : far(size);
  return x < 0 ? 2 - tail : tail;
}

/** erf on -0.46875 to 0.46875. */
function nearZero(x: number): number {
  return x * ratio(x * x, nearAbove, nearBelow);
}

function middle(x: number): number {
  return scaled(x) * ratio(x, middleAbove, middleBelow);
}

function far(x: number): number {
  if (x > 26.6) return 0;
  const inverse = 1 / (x * x);
  const correction = inverse * ratio(inverse, farAbove, farBelow);
  return (scaled(x) * (oneOverSqrtPi - correction)) / x;
}

/** exp(-x^2) without losing digits in the square. */
function scaled(x: number): number {
  const coarse = Math.trunc(x * 16) / 16;
  return Math.exp(-coarse * coarse) * Math.exp(-(x - coarse) * (x + coarse));
}

/** Horner from the highest power down; `above` has one coefficient more than `below`, which begins with 1. */
function ratio(x: number, above: readonly number[], below: readonly number[]): number {
  let top = above[0]! * x;
  let bottom = x;
  for (let i = 0; i < below.length - 1; i += 1) {
    top = (top + above[i + 1]!) * x;
    bottom = (bottom + below[i]!) * x;
  }
  return (top + above.at(-1)!) / (bottom + below.at(-1)!);
}

const oneOverSqrtPi = 0.5641895835477563;

const nearAbove = [
  0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694,
];
const nearBelow = [23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const middleAbove = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163,
  298.6351381974001, 881.952221241769, 1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
];
const middleBelow = [
  15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
];
const farAbove = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926,
  0.016083785148742275, 0.0006587491615298378,
];
const farBelow = [
  2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132,
  0.0023352049762686918,
];
