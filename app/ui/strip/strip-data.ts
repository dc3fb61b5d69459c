import type { StripFacts, StripPartner } from '@/lib/text/strip-facts';

/** Everything a size strip shows of one feature of one piece. Lengths are whole pm. */
export type StripData = StripFacts & {
  /** Half-width of the guard about each limit: 1.65 u, or the job's own rule. */
  guardPm?: number;
  /** Lines at the quarter points of the limits: the batch runs by zones. */
  quarters?: boolean;
  /** It is the piece being cut: its notch is blue. */
  live?: boolean;
  /** The scale to keep while the piece is open; without it `stripSpan` decides. */
  spanPm?: SpanPm;
};

/** Both ends of a scale, pm. */
export type SpanPm = { fromPm: number; toPm: number };

/** Where a partner stands, pm: as wide as its bar, or its limits while it is not measured. */
export function partnerStretch(partner: StripPartner | null | undefined): SpanPm | null {
  if (partner === null || partner === undefined) return null;
  const { sizePm, expandedPm, lowerPm, upperPm } = partner;
  if (sizePm !== null) {
    return { fromPm: sizePm - (expandedPm ?? 0), toPm: sizePm + (expandedPm ?? 0) };
  }
  return lowerPm === null || upperPm === null ? null : { fromPm: lowerPm, toPm: upperPm };
}
