import type { SpreadOfSet } from '@/lib/maths/statistics/pooled-standard-deviation';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';

/** The spread of what one gauge read twice or more in one set. */
export type GaugeSpread = { gaugeId: string; spread: SpreadOfSet };

/**
 * The spread of each gauge in one set of repeated readings, in the order in which the gauges come in it. A gauge
 * that read once says nothing and is left out. Cost: O(readings).
 */
export function gaugeSpreads(
  set: readonly { gaugeId: string; valuePm: number }[],
): readonly GaugeSpread[] {
  if (set.length < 2) return none;
  const groups = new Map<string, number[]>();
  for (const { gaugeId, valuePm } of set) {
    const group = groups.get(gaugeId);
    if (group === undefined) groups.set(gaugeId, [valuePm]);
    else group.push(valuePm);
  }
  return [...groups].flatMap(([gaugeId, values]): GaugeSpread[] => {
    if (values.length < 2) return [];
    const sd = standardDeviation(values.map((value) => value - values[0]!));
    return [{ gaugeId, spread: { sd, degrees: values.length - 1 } }];
  });
}

const none: readonly GaugeSpread[] = [];
