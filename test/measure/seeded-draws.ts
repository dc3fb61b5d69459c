export type Draws = { uniform: () => number; normal: () => number };

/**
 * Repeatable pseudo-random draws for timing: uniform on [0, 1) and standard normal.
 *
 * Marsaglia's xorshift of 32 bits and the polar method of Box and Muller; good enough to fill a
 * matrix, not for results.
 */
export function seededDraws(seed: number): Draws {
  let state = (seed * 2654435761) >>> 0 || 1;
  const uniform = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
