import { MathsInputError } from '../check';

/** A measured quantity as a function of its inputs. */
export type Model = (values: readonly number[]) => number;

/**
 * How much a result moves for a small move of each input: the partial derivatives at `values`.
 *
 * Central differences at steps halved six times, extrapolated to none; the row that agrees best with
 * the one before it is kept. Relative error about 1e-10 for smooth models. `scales` sets the first
 * step of each input, its uncertainty by custom; where the model has no value there, smaller steps
 * are tried. Cost: about 12 evaluations an input. Source: [ridders-1982].
 *
 * @throws {MathsInputError} `sensitivities/model`, `sensitivities/shape`
 *
 * @example
 * sensitivities(([L, w]) => (L! - w!) / 2, [42.016, 5.032], [0.002, 0.002]); // [0.5, -0.5]
 */
export function sensitivities(
  model: Model,
  values: readonly number[],
  scales: readonly number[] = [],
): number[] {
  if (scales.length > 0 && scales.length !== values.length) {
    throw new MathsInputError(
      'sensitivities/shape',
      `sensitivities requires one scale for each of ${values.length} inputs, got ${scales.length}`,
    );
  }
  return values.map((value, i) => {
    const moved = (by: number) => model(values.map((other, j) => (j === i ? other + by : other)));
    const scale = scales[i] ?? 0;
    return slope(moved, scale > 0 ? scale : Math.max(Math.abs(value) * 1e-3, 1e-6), i);
  });
}

function slope(moved: (by: number) => number, scale: number, index: number): number {
  let start = scale;
  for (let tries = 0; tries < 40 && !isDefined(moved, start); tries += 1) start /= 2;
  if (!isDefined(moved, start)) {
    throw new MathsInputError(
      'sensitivities/model',
      `sensitivities requires a model with a value near its inputs, got none at input ${index}`,
    );
  }
  let best = { value: difference(moved, start), doubt: Infinity };
  let row = [best.value];
  for (let k = 1; k <= 6; k += 1) {
    const next = [difference(moved, start / 2 ** k)];
    for (let j = 1; j <= k; j += 1) {
      const power = 4 ** j;
      next.push((power * next[j - 1]! - row[j - 1]!) / (power - 1));
      const doubt = Math.max(Math.abs(next[j]! - next[j - 1]!), Math.abs(next[j]! - row[j - 1]!));
      if (doubt < best.doubt) best = { value: next[j]!, doubt };
    }
    row = next;
  }
  return best.value;
}

function difference(moved: (by: number) => number, step: number): number {
  return (moved(step) - moved(-step)) / (2 * step);
}

function isDefined(moved: (by: number) => number, step: number): boolean {
  return Number.isFinite(moved(step)) && Number.isFinite(moved(-step));
}
