import { guardPicometres } from '@/lib/maths/fit/guard-picometres';
import { verdictOf as judge } from '@/lib/maths/fit/verdict-of';
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

/** What a standard uncertainty is multiplied by for the guard that is drawn and decided with (ISO 14253-1). */
export const guardFactor = 1.65;

/**
 * The decision of ISO 14253-1 on a size, with what a workshop adds: out on the side where metal can still
 * come off is `to cut`. Null where the feature has no limit at all, or limits that contradict each other.
 */
export function verdictOf(
  size: { valuePm: number; standardPm: number },
  limits: Limits,
  kind: FeatureKind,
): Verdict | null {
  const { lowerPm, upperPm } = limits;
  if (lowerPm === null && upperPm === null) return null;
  if (lowerPm !== null && upperPm !== null && lowerPm >= upperPm) return null;
  const said = judge(
    size.valuePm,
    { ...(lowerPm === null ? {} : { lowerPm }), ...(upperPm === null ? {} : { upperPm }) },
    guardPicometres([size.standardPm]),
  );
  if (said.kind === 'inside') return { state: 'inside', side: null, beyondPm: 0, limitPm: null };
  const side = said.side === 'top' || said.side === 'large' ? 'top' : 'bottom';
  const limitPm = side === 'top' ? upperPm : lowerPm;
  const pastPm = side === 'top' ? size.valuePm - upperPm! : lowerPm! - size.valuePm;
  const beyondPm = Math.max(0, pastPm);
  const isStock = said.kind === 'out' && metalLeftSide(kind) === side;
  return { state: isStock ? 'to cut' : said.kind, side, beyondPm, limitPm };
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
