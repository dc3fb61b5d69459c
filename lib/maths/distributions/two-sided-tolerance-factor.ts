import { chiSquareCdf } from './chi-square-cdf';
import { chiSquarePdf } from './chi-square-pdf';
import { normalCdf } from './normal-cdf';
import { normalPdf } from './normal-pdf';
import { normalQuantile } from './normal-quantile';
import { positiveRoot } from './positive-root';
import { requireToleranceInputs } from './tolerance-guards';
import { twoSidedToleranceFactorQuick } from './two-sided-tolerance-factor-quick';

/**
 * Factor k of a two-sided statistical tolerance interval, mean -+ k s: with the given confidence at
 * least the given content of a normal population lies between.
 *
 * Exact: k solves integral of phi(z) Pr[chi2(nu) > nu r(z)^2/k^2] dz = confidence, where
 * PHI(z/sqrt n + r) - PHI(z/sqrt n - r) = content. Even steps in z, which converge faster than any
 * power for such integrands; relative error about 1e-10. Cost: about a millisecond.
 * Source: [iso-16269-6]; the integral after [odeh-owen-1980].
 *
 * @throws {MathsInputError} `two-sided-tolerance-factor/too-few`,
 *   `two-sided-tolerance-factor/content`, `two-sided-tolerance-factor/confidence`
 *
 * @example
 * twoSidedToleranceFactor(10, 0.95, 0.95); // 3.393429
 */
export function twoSidedToleranceFactor(n: number, content: number, confidence: number): number {
  const code = 'two-sided-tolerance-factor';
  requireToleranceInputs('twoSidedToleranceFactor', code, n, content, confidence);
  const nu = n - 1;
  const nodes = Array.from({ length: steps + 1 }, (_, i) => {
    const z = i * step;
    const weight = (i === 0 ? 1 : 2) * step * normalPdf(z);
    return { weight, reach: nu * halfWidth(z / Math.sqrt(n), content) ** 2 };
  });
  const missed = (k: number) => {
    let value = 0;
    let slope = 0;
    for (const { weight, reach } of nodes) {
      const x = reach / (k * k);
      value += weight * chiSquareCdf(x, nu);
      slope += (weight * chiSquarePdf(x, nu) * 2 * x) / k;
    }
    return { value, slope };
  };
  const guess = twoSidedToleranceFactorQuick(n, content, confidence);
  return positiveRoot(missed, 1 - confidence, false, guess);
}

const step = 0.0625;
const steps = 150;

/** r with PHI(c + r) - PHI(c - r) = content: between its value at c = 0 and that plus |c|. */
function halfWidth(c: number, content: number): number {
  let low = normalQuantile((1 + content) / 2);
  let high = low + c;
  let r = high;
  for (let i = 0; i < 60; i += 1) {
    const miss = normalCdf(c + r) - normalCdf(c - r) - content;
    if (miss > 0) high = r;
    else low = r;
    const newton = r - miss / (normalPdf(c + r) + normalPdf(c - r));
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    const move = Math.abs(next - r);
    r = next;
    if (move < 1e-14 * r) break;
  }
  return r;
}
