import type { CutAim } from './cut-aim';
import { clearanceOf, type Clearance, type FitPiece, type FitView } from '../fit-view';
import { cellKey } from '../cells';
import { targetFor, type Target } from '../target';
import { guardFactor } from '../verdict';

/** What can become of a piece that is past its stop, each with its numbers. Lengths in pm. */
export type PastChoices = {
  /** A measured, free partner it suits: the one nearest to the aim. */
  other: (Clearance & { partnerId: string }) | null;
  /** The measured, free partner it comes nearest to suiting, where it suits none. */
  nearest: (Clearance & { partnerId: string }) | null;
  /** A partner that can still be made to it, and to what. */
  make: Target | null;
  /** What a sleeve has to put back at the least, on diameter, to reach the target again. */
  sleevePm: number;
};

/** The choices for a piece that is past the stop of what it was cut to. */
export function pastChoices(aim: CutAim, pieceId: string): PastChoices {
  const nowPm = aim.now!.valuePm;
  const sleevePm = aim.side === 'external' ? aim.aimPm - nowPm : nowPm - aim.aimPm;
  const none = { other: null, nearest: null, make: null, sleevePm };
  if (aim.partner === null) return none;
  const { fit } = aim.partner;
  const isExternal = aim.side === 'external';
  const own: FitPiece | undefined = (isExternal ? fit.externals : fit.internals).find(
    ({ piece }) => piece.id === pieceId,
  );
  if (own === undefined || own.size === null) return none;
  const held = heldBy(fit, pieceId);
  const free = (isExternal ? fit.internals : fit.externals).filter(({ piece }) => {
    const [internalId, externalId] = isExternal ? [piece.id, pieceId] : [pieceId, piece.id];
    return !held.has(piece.id) && !fit.leftOut.has(cellKey(internalId, externalId));
  });
  const clearances = free
    .flatMap((partner) => {
      const [internal, external] = isExternal ? [partner, own] : [own, partner];
      const clearance = clearanceOf(internal, external, fit.fit);
      return clearance === null || partner.stillToCut
        ? []
        : [{ ...clearance, partnerId: partner.piece.id }];
    })
    .sort((a, b) => offAim(a, fit) - offAim(b, fit));
  const suits = ({ verdict }: Clearance) =>
    verdict.state === 'inside' || verdict.state === 'near' || verdict.state === 'unsure';
  const other = clearances.find(suits) ?? null;
  const unmade = free.find((partner) => hasMetalFor(partner, own, fit, isExternal));
  return {
    other,
    nearest: other === null ? (clearances[0] ?? null) : null,
    make:
      unmade === undefined
        ? null
        : targetFor(unmade, own, fit.fit, isExternal ? 'internal' : 'external'),
    sleevePm,
  };
}

/** Pieces that a person has tied to another one, or that the pairing has tied to another that is made. */
function heldBy(fit: FitView, pieceId: string): Set<string> {
  const paired = fit.pairs
    .filter((pair) => pair.internalPieceId !== pieceId && pair.externalPieceId !== pieceId)
    .flatMap((pair) => [pair.internalPieceId, pair.externalPieceId]);
  return new Set([...paired, ...fit.lockedToMake]);
}

function offAim({ clearancePm }: Clearance, { fit }: FitView): number {
  return Math.abs(clearancePm - fit.aimPm);
}

/** It is not measured yet, or too tight with the piece, so that metal can come off it. */
function hasMetalFor(
  partner: FitPiece,
  own: FitPiece,
  { fit }: FitView,
  isExternal: boolean,
): boolean {
  if (partner.size === null) return true;
  const [internal, external] = isExternal ? [partner, own] : [own, partner];
  const clearancePm = internal.size!.valuePm - external.size!.valuePm;
  return clearancePm < fit.minPm - guardFactor * partner.size.standardPm;
}
