/**
 * The error of Stirling's formula: ln Gamma(x) - [(x - 1/2) ln x - x + ln sqrt(2 pi)], x above zero.
 *
 * From 15 up an asymptotic series; below, the step delta(x) = delta(x+1) + (x+1/2) ln(1+1/x) - 1
 * taken until 15. Absolute error about 1e-16 per step, which is what counts in an exponent.
 * Source: [loader-2000] for the use, [dlmf] 5.11.1 for the series.
 */
export function stirlingError(x: number): number {
  let sum = 0;
  let here = x;
  while (here < 15) {
    sum += (here + 0.5) * Math.log1p(1 / here) - 1;
    here += 1;
  }
  const square = 1 / (here * here);
  const series =
    1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188))));
  return sum + series / here;
}
