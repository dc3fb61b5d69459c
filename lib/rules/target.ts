import { targetFromPartner } from '@/lib/maths/fit/target-from-partner';
import type { Fit } from '@/lib/schema/fit';
import type { FitPiece } from './fit-view';
import type { GoverningSize } from './governing-size';

/** What to make a piece to, from its partner's measured size. Sizes in pm. */
export type Target = {
  pieceId: string;
  partnerId: string;
  partnerSize: GoverningSize;
  /** Partner's size less the clearance aimed at. */
  targetPm: number;
  /** The fit's own limits about this partner. */
  limits: { lowerPm: number; upperPm: number };
  /** Working limits: those limits less the guard of both sizes. */
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
 * Target of an external piece from its measured internal partner (`targetFromPartner`). Where the piece has
 * no size yet it is taken to be known as well as its partner.
 */
export function targetFor(
  external: FitPiece,
  partner: FitPiece,
  fit: Pick<Fit, 'minPm' | 'maxPm' | 'aimPm'>,
): Target {
  const partnerSize = partner.size!;
  const said = targetFromPartner({
    make: 'external',
    partner: { sizePm: partnerSize.valuePm, uPm: partnerSize.standardPm },
    uMadePm: external.size?.standardPm ?? partnerSize.standardPm,
    fit,
  });
  const nowPm = external.size?.valuePm ?? null;
  return {
    pieceId: external.piece.id,
    partnerId: partner.piece.id,
    partnerSize,
    targetPm: said.aimPm,
    limits: { lowerPm: said.lowerPm, upperPm: said.upperPm },
    noLargerPm: said.upperPm - said.guardPm,
    noSmallerPm: said.lowerPm + said.guardPm,
    provable: said.working.kind === 'band',
    nowPm,
    leftPm: nowPm === null ? null : nowPm - said.aimPm,
  };
}
