import type { Random } from './seeded-random';
import { zigguratLayers } from './ziggurat-layers';

/**
 * A source of standard normal draws, by the ziggurat of Marsaglia and Tsang.
 *
 * One number of the sequence picks layer, side and place: its first 7 bits the layer, the 45 that are
 * left the place from one edge to the other, so that neither tells of the other. In 97.2 % of draws
 * the place is under the curve for certain; else the curve itself decides, or the tail beyond 3.44.
 * Cost: O(1) a draw. Source: [marsaglia-tsang-2000-ziggurat].
 *
 * @example
 * const normal = normalDraws(seededRandom(1));
 * normal(); // one draw
 */
export function normalDraws(random: Random): () => number {
  return () => {
    for (;;) {
      const scaled = 128 * random();
      const layer = Math.floor(scaled);
      const x = (2 * (scaled - layer) - 1) * widths[layer]!;
      if (Math.abs(x) < widths[layer + 1]!) return x;
      if (layer === 0) return x < 0 ? -tail(random) : tail(random);
      if (isUnder(x, layer, random())) return x;
    }
  };
}

const { widths, heights } = zigguratLayers();

/** Whether a point of a layer, at a part of its height, is under the curve. */
function isUnder(x: number, layer: number, part: number): boolean {
  const y = heights[layer]! + part * (heights[layer + 1]! - heights[layer]!);
  return y < Math.exp(-0.5 * x * x);
}

/** A draw from the normal tail beyond the base, by Marsaglia's method of 1964. */
function tail(random: Random): number {
  const r = widths[1]!;
  for (;;) {
    const x = -Math.log(random()) / r;
    if (-2 * Math.log(random()) >= x * x) return r + x;
  }
}
