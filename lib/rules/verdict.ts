import type { FeatureKind } from '@/lib/schema/feature';

/** Sizes between which a feature must be, pm; null where that side is open. */
export type Limits = { lowerPm: number | null; upperPm: number | null };

export type Verdict = {
  /**
   * `inside`, `near` (inside, but within an eighth of the band of a limit), `unsure` (within the guard of
   * a limit: not known well enough to say), `out`, or `to cut` (beyond the limit on the side where metal
   * can still come off).
   */
  state: 'inside' | 'near' | 'unsure' | 'out' | 'to cut';
  /** The limit it is near, astride or beyond; null when it is clear of both. */
  side: 'top' | 'bottom' | null;
  /** How far beyond that limit, pm, never negative; 0 when it is not beyond. */
  beyondPm: number;
  /** That limit, pm; null when it is clear of both. */
  limitPm: number | null;
};

/** One-sided 95 % quantile of the normal distribution, as ISO 14253-1 guards with and look.md draws. */
export const guardFactor = 1.65;

/**
 * The decision of ISO 14253-1 on a size: inside, outside, or not known well enough to say.
 *
 * Guard g = 1.65 u on both sides of each limit. Null where the feature has no limit at all. Comparisons
 * are of whole picometres with g; a size exactly on L + g is inside.
 */
export function verdictOf(
  size: { valuePm: number; standardPm: number },
  limits: Limits,
  kind: FeatureKind,
): Verdict | null {
  const { lowerPm, upperPm } = limits;
  if (lowerPm === null && upperPm === null) return null;
  const guardPm = guardFactor * size.standardPm;
  const overTopPm = upperPm === null ? -Infinity : size.valuePm - upperPm;
  const underBottomPm = lowerPm === null ? -Infinity : lowerPm - size.valuePm;
  const side = overTopPm >= underBottomPm ? 'top' : 'bottom';
  const limitPm = side === 'top' ? upperPm : lowerPm;
  const beyondPm = Math.max(overTopPm, underBottomPm);

  if (beyondPm > guardPm) {
    const state = metalLeftSide(kind) === side ? 'to cut' : 'out';
    return { state, side, beyondPm, limitPm };
  }
  if (beyondPm > -guardPm) {
    return { state: 'unsure', side, beyondPm: Math.max(0, beyondPm), limitPm };
  }
  const bandPm = lowerPm !== null && upperPm !== null ? upperPm - lowerPm : null;
  if (bandPm !== null && -beyondPm < bandPm / 8) {
    return { state: 'near', side, beyondPm: 0, limitPm };
  }
  return { state: 'inside', side: null, beyondPm: 0, limitPm: null };
}

/** The side on which a feature is while metal can still come off it: a shaft is large, a bore small. */
export function metalLeftSide(kind: FeatureKind): 'top' | 'bottom' | null {
  switch (kind) {
    case 'outside':
    case 'width':
    case 'length':
      return 'top';
    case 'bore':
    case 'slot':
    case 'depth':
      return 'bottom';
    default:
      return null;
  }
}
