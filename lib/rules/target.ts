import { targetFromPartner } from '@/lib/maths/fit/target-from-partner';
import type { Fit } from '@/lib/schema/fit';
import type { FitPiece } from './fit-view';
import type { GoverningSize } from './governing-size';

/** What to make a piece to, from its partner's measured size. Sizes in pm. */
export type Target = {
  pieceId: string;
  partnerId: string;
  /** Which side is made: a shaft is turned down to its target, a bore is bored up to it. */
  make: 'external' | 'internal';
  partnerSize: GoverningSize;
  /** Partner's size less the clearance aimed at; of a bore, with it. */
  aimPm: number;
  /** That, or where it is within the guard of a limit the nearest size that proves the fit. */
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
 * Target of a piece from its measured partner (`targetFromPartner`). Where the piece has no size yet it is
 * taken to be known as well as its partner.
 */
export function targetFor(
  piece: FitPiece,
  partner: FitPiece,
  fit: Pick<Fit, 'minPm' | 'maxPm' | 'aimPm'>,
  make: Target['make'] = 'external',
): Target {
  const partnerSize = partner.size!;
  const said = targetFromPartner({
    make,
    partner: { sizePm: partnerSize.valuePm, uPm: partnerSize.standardPm },
    uMadePm: piece.size?.standardPm ?? partnerSize.standardPm,
    fit,
  });
  const nowPm = piece.size?.valuePm ?? null;
  const { working } = said;
  const targetPm =
    working.kind === 'none'
      ? said.aimPm
      : Math.min(Math.max(said.aimPm, working.lowerPm), working.upperPm);
  const leftPm = make === 'external' ? (nowPm ?? 0) - targetPm : targetPm - (nowPm ?? 0);
  return {
    pieceId: piece.piece.id,
    partnerId: partner.piece.id,
    make,
    partnerSize,
    aimPm: said.aimPm,
    targetPm,
    limits: { lowerPm: said.lowerPm, upperPm: said.upperPm },
    noLargerPm: said.upperPm - said.guardPm,
    noSmallerPm: said.lowerPm + said.guardPm,
    provable: working.kind === 'band',
    nowPm,
    leftPm: nowPm === null ? null : leftPm,
  };
}
