/** The smallest of 1, 2, 5 x 10^n that is at least `least` and a whole number of `unit`. */
export function tickStep(least: number, unit: number): number {
  for (let power = unit; ; power *= 10) {
    for (const factor of [1, 2, 5]) {
      if (factor * power >= least) return factor * power;
    }
  }
}
