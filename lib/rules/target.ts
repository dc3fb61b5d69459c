import type { Fit } from '@/lib/schema/fit';
import type { FitPiece } from './fit-view';
import type { GoverningSize } from './governing-size';
import { guardFactor } from './verdict';

/** What to make a piece to, from its partner's measured size. Sizes in pm. */
export type Target = {
  pieceId: string;
  partnerId: string;
  partnerSize: GoverningSize;
  /** Partner's size less the clearance aimed at. */
  targetPm: number;
  /** The fit's own limits about this partner. */
  limits: { lowerPm: number; upperPm: number };
  /** Working limits: those limits less the guard of both sizes; `noSmallerPm` > `noLargerPm` means no room. */
  noLargerPm: number;
  noSmallerPm: number;
  /** False where the doubt of the two sizes eats the whole band: the gauges cannot prove this fit. */
  provable: boolean;
  /** What it measures now, where something was measured. */
  nowPm: number | null;
  /** Metal still to come off on diameter; null while nothing was measured. */
  leftPm: number | null;
};

/**
 * Target of an external piece from its measured internal partner: partner - aim, kept between
 * partner - max + g and partner - min - g, with g = 1.65 hypot(u of the partner, u of the piece)
 * (ISO 14253-1). Where the piece has no size yet it is taken to be known as well as its partner.
 */
export function targetFor(
  external: FitPiece,
  partner: FitPiece,
  fit: Pick<Fit, 'minPm' | 'maxPm' | 'aimPm'>,
): Target {
  const partnerSize = partner.size!;
  const standardPm = external.size?.standardPm ?? partnerSize.standardPm;
  const guardPm = guardFactor * Math.hypot(partnerSize.standardPm, standardPm);
  const lowerPm = partnerSize.valuePm - fit.maxPm;
  const upperPm = partnerSize.valuePm - fit.minPm;
  const noLargerPm = Math.floor(upperPm - guardPm);
  const noSmallerPm = Math.ceil(lowerPm + guardPm);
  const targetPm = partnerSize.valuePm - fit.aimPm;
  const nowPm = external.size?.valuePm ?? null;
  return {
    pieceId: external.piece.id,
    partnerId: partner.piece.id,
    partnerSize,
    targetPm,
    limits: { lowerPm, upperPm },
    noLargerPm,
    noSmallerPm,
    provable: noSmallerPm <= noLargerPm,
    nowPm,
    leftPm: nowPm === null ? null : nowPm - targetPm,
  };
}
