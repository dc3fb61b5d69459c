export type ZigguratLayers = {
  /** Half widths, the base first: `widths[i]` of layer i, falling to 0 past the last. */
  widths: Float64Array;
  /** `heights[i]` is where layer i begins, exp(-x^2/2) at its width; the last is 1. */
  heights: Float64Array;
};

/**
 * The 128 layers of equal area that the ziggurat lays over exp(-x^2/2), x from 0 up.
 *
 * Layer i reaches from 0 to widths[i] and from heights[i] to heights[i+1]. The base is wider than the
 * curve's layer: what of its area lies beyond r stands for the tail. With r the width of layer 1 and
 * v the area of each, x[i+1] = sqrt(-2 ln(v/x[i] + exp(-x[i]^2/2))); r and v are such that the top
 * layer just closes at 1. Source: [marsaglia-tsang-2000-ziggurat] for 128 layers; r and v solved anew,
 * as those printed close the layers only to 1e-9.
 */
export function zigguratLayers(): ZigguratLayers {
  const widths = new Float64Array(129);
  const heights = new Float64Array(129);
  widths[0] = v / Math.exp(-0.5 * r * r);
  widths[1] = r;
  for (let i = 1; i < 128; i += 1) {
    heights[i] = Math.exp(-0.5 * widths[i]! ** 2);
    if (i < 127) widths[i + 1] = Math.sqrt(-2 * Math.log(v / widths[i]! + heights[i]!));
  }
  heights[128] = 1;
  return { widths, heights };
}

/** Where the tail begins, and the area of a layer. */
const r = 3.442619855896652;
const v = 0.009912563035336466;
