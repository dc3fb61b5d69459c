import { nearestFits, type NearFit } from '@/lib/maths/iso286/nearest-fits';

/** A standard pair of classes near a wanted clearance; lengths in pm. */
export type NearPair = { text: string; minPm: number; maxPm: number; inside: boolean };

const pmPerUm = 1_000_000;

/**
 * The three standard pairs of hole basis whose clearances come nearest to those wanted, nearest first;
 * none where the nominal is beyond the tables (3150 mm) or nothing is between least and most.
 */
export function nearFits(
  wanted: { minPm: number; maxPm: number },
  nominalPm: number | null,
): NearPair[] {
  if (nominalPm === null || nominalPm > 3_150_000_000_000 || wanted.minPm >= wanted.maxPm)
    return [];
  const found = nearestFits({
    nominalMm: nominalPm / 1e9,
    minClearanceUm: wanted.minPm / pmPerUm,
    maxClearanceUm: wanted.maxPm / pmPerUm,
    basis: 'hole',
    count: 3,
  });
  return found.map(({ text, minClearanceUm, maxClearanceUm, inside }: NearFit) => ({
    text,
    minPm: Math.round(minClearanceUm * pmPerUm),
    maxPm: Math.round(maxClearanceUm * pmPerUm),
    inside,
  }));
}
