import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { pmPerUnit, type LengthUnit } from '@/lib/units/picometres';

/** What the last figures of a size are held against. Lengths are whole pm. */
export type LastDigitsFacts = {
  /** What a figure without a unit is in. */
  unit: LengthUnit;
  /** The step of the gauge: its last place is the last place typed. */
  resolutionPm: number;
  /** The readings the leading figures come from: of this feature, since its last cut. */
  neighboursPm: readonly number[];
};

/**
 * Which whole sizes a few figures may stand for, the likeliest first, and the place they end at.
 * One size is certain; several are asked about, never chosen from.
 */
export type LastDigits = { sizesPm: number[]; resolutionPm: number };

/** A size further from the neighbours than this share of the step of the first figure left out is asked about. */
const certainShare = 1 / 4;
/** Neighbours that leave more open than this say nothing: the figures are then read as they stand. */
const answersMost = 4;

/**
 * The sizes that end in the figures typed: `34` beside readings of 18.331 and 18.336 is 18.334.
 *
 * Only figures, no more than stand after the mark and fewer than the neighbours have, without mark, sign
 * or unit. Certain is one size: the
 * neighbours agree in the figures left out, those give the size nearest to them, it lies within a
 * quarter of the next place of them, and the figures as they stand (`18` beside 18.003) are no likely
 * size themselves. Otherwise every size that one of this would give is returned, the nearest first:
 * `01` beside 17.998 and 17.999 is 18.001 or 17.901. Null where the figures are no last figures of
 * anything. Common practice, no source. Cost: O(neighbours).
 */
export function entryLastDigits(text: string, facts: LastDigitsFacts): LastDigits | null {
  const typed = text.trim();
  const { unit, neighboursPm } = facts;
  if (!/^\d{1,6}$/.test(typed) || neighboursPm.length === 0) return null;
  const decimals = decimalsForResolution(facts.resolutionPm, unit);
  const stepPm = pmPerUnit(unit) / 10 ** decimals;
  const spanPm = stepPm * 10 ** typed.length;
  const lowPm = Math.min(...neighboursPm);
  const highPm = Math.max(...neighboursPm);
  if (!Number.isInteger(stepPm) || typed.length > decimals || lowPm < spanPm) return null;

  const figuresPm = Number(typed) * stepPm;
  const awayPm = (pm: number) => Math.max(lowPm - pm, pm - highPm, 0);
  const leads = new Set(neighboursPm.map((pm) => Math.floor(gridPm(pm, stepPm) / spanPm)));
  const sizes = new Set([...leads].map((lead) => lead * spanPm + figuresPm));
  const first = Math.floor((lowPm - figuresPm) / spanPm);
  const beside = [0, 1, 2]
    .map((by) => (first + by) * spanPm + figuresPm)
    .filter((pm) => pm > 0)
    .sort((a, b) => awayPm(a) - awayPm(b));
  // The nearest, and what is as near; where even that is far, the one on the other side too.
  const [nearest, other] = beside as [number, number | undefined];
  sizes.add(nearest);
  const isFar = awayPm(nearest) > certainShare * spanPm;
  if (other !== undefined && (isFar || awayPm(other) === awayPm(nearest))) sizes.add(other);
  const plainPm = Number(typed) * pmPerUnit(unit);
  if (awayPm(plainPm) <= certainShare * spanPm) sizes.add(plainPm);
  const sizesPm = [...sizes].sort((a, b) => awayPm(a) - awayPm(b) || a - b);
  return sizesPm.length > answersMost ? null : { sizesPm, resolutionPm: stepPm };
}

/** To the step the figures are typed in: an inch gauge read in millimetres lies between two. */
function gridPm(pm: number, stepPm: number): number {
  return Math.round(pm / stepPm) * stepPm;
}
