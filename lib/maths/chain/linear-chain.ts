import { requireLinks, type Link } from './check-chain';

/** Least and most of a closing link. */
export type ClosingRange = { least: number; most: number };

export type LinearChain = {
  /** Closing link with every piece at its nominal. */
  nominal: number;
  /** Closing link with every piece in the middle of its zone. */
  middle: number;
  worstHalf: number;
  worst: ClosingRange;
  rssHalf: number;
  rss: ClosingRange;
  /** Part of each link in the square of `rssHalf`, percent; all 0 in a chain of no tolerance. */
  sharePercent: number[];
};

/**
 * Worst case and root-sum-square of a chain of dimensions.
 *
 * closing = sum of coefficient x size, about the middles of the zones;
 * worst half = sum |a| t, rss half = sqrt(sum (a t)^2), t the half tolerance.
 *
 * The root-sum-square half has the rank of the t's (three sigma when they are)
 * and stands for centred, independent pieces: it is an expectation, the worst
 * case a promise. Two equal pieces are two links, not one with coefficient 2.
 * Any one unit of length.
 *
 * Cost: O(links). Source: [shigley-9] 1-14, definitions.
 *
 * @throws {MathsInputError} `linear-chain/no-link`, `linear-chain/link`
 *
 * @example
 * linearChain([
 *   { coefficient: 1, nominal: 22, upper: 0.01, lower: -0.01 },
 *   { coefficient: -1, nominal: 20, upper: 0.01, lower: -0.01 },
 * ]); // worst 1.98 to 2.02, rssHalf 0.01414
 */
export function linearChain(links: readonly Link[]): LinearChain {
  requireLinks('linear-chain', 'linearChain', links);
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const nominal = sum(links.map((link) => link.coefficient * link.nominal));
  const middle =
    nominal + sum(links.map((link) => (link.coefficient * (link.upper + link.lower)) / 2));
  const halves = links.map((link) => Math.abs(link.coefficient * (link.upper - link.lower)) / 2);
  const worstHalf = sum(halves);
  const rssHalf = Math.hypot(...halves);
  return {
    nominal,
    middle,
    worstHalf,
    worst: { least: middle - worstHalf, most: middle + worstHalf },
    rssHalf,
    rss: { least: middle - rssHalf, most: middle + rssHalf },
    sharePercent: halves.map((half) => (rssHalf === 0 ? 0 : 100 * (half / rssHalf) ** 2)),
  };
}
