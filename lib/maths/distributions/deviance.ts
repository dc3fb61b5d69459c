/**
 * x ln(x/m) + m - x for x and m above zero, without cancelling when they are close.
 *
 * Source: [loader-2000], the deviance part of the saddle-point form.
 */
export function deviance(x: number, m: number): number {
  const off = x - m;
  if (Math.abs(off) >= 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = off / (x + m);
  let sum = off * v;
  let power = 2 * x * v;
  for (let odd = 3; odd < 200; odd += 2) {
    power *= v * v;
    const next = sum + power / odd;
    if (next === sum) break;
    sum = next;
  }
  return sum;
}
