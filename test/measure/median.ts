/** The middle of some figures; of an even number of them the mean of the two in the middle. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Does `run` once with each thing that `make` gives; making them is not timed. */
export type Contender = { times: number; make: () => unknown; run: (made: never) => unknown };

/**
 * How long one call of each takes, ms: medians over several rounds, in each of which all take their turn, so
 * that a busy moment of the machine falls on all alike.
 */
export async function timeSideBySide<Name extends string>(
  rounds: number,
  contenders: Record<Name, Contender>,
): Promise<Record<Name, number>> {
  const names = Object.keys(contenders) as Name[];
  const taken = Object.fromEntries(names.map((name) => [name, [] as number[]]));
  for (let round = -1; round < rounds; round += 1) {
    for (const name of names) {
      const { times, make, run } = contenders[name];
      const things = Array.from({ length: times }, make) as never[];
      const begun = performance.now();
      for (const thing of things) await run(thing);
      const each = (performance.now() - begun) / times;
      if (round >= 0) taken[name]!.push(each); // the round before the first warms up
    }
  }
  return Object.fromEntries(names.map((name) => [name, median(taken[name]!)])) as Record<
    Name,
    number
  >;
}
