/** Repeatability of one gauge, pooled over the features it has measured more than once. */
export type Pool = {
  /** Pooled standard deviation of one reading, pm. */
  sdPm: number;
  /** Degrees of freedom behind it. */
  degrees: number;
};

/**
 * Pooled repeatability of each gauge: s_p^2 = sum nu_i s_i^2 / sum nu_i over its sets of repeated
 * readings (JCGM 100, 4.2.4). A set is what was read of one feature on one piece between two cuts.
 * Sets of one reading say nothing and are passed over. Cost: O(readings).
 */
export function gaugeHistory(
  sets: Iterable<readonly { gaugeId: string; valuePm: number }[]>,
): Map<string, Pool> {
  const sums = new Map<string, { squares: number; degrees: number }>();
  for (const set of sets) {
    for (const [gaugeId, values] of byGauge(set)) {
      if (values.length < 2) continue;
      const origin = values[0]!;
      const mean = values.reduce((sum, v) => sum + (v - origin), 0) / values.length;
      const squares = values.reduce((sum, v) => sum + (v - origin - mean) ** 2, 0);
      const old = sums.get(gaugeId) ?? { squares: 0, degrees: 0 };
      sums.set(gaugeId, {
        squares: old.squares + squares,
        degrees: old.degrees + values.length - 1,
      });
    }
  }
  return new Map(
    [...sums].map(([id, { squares, degrees }]) => [
      id,
      { sdPm: Math.sqrt(squares / degrees), degrees },
    ]),
  );
}

function byGauge(set: readonly { gaugeId: string; valuePm: number }[]): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  for (const { gaugeId, valuePm } of set) {
    const group = groups.get(gaugeId);
    if (group === undefined) groups.set(gaugeId, [valuePm]);
    else group.push(valuePm);
  }
  return groups;
}
