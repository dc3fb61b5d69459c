import type { Cut } from '@/lib/schema/fit';
import type { Feature } from '@/lib/schema/feature';
import { guardPicometres } from '@/lib/maths/fit/guard-picometres';
import { cellKey, type Cell } from '../cells';
import type { FitPiece, FitView } from '../fit-view';
import { governingSize, type GoverningSize } from '../governing-size';
import type { JobView } from '../job-view';
import { targetFor } from '../target';
import { metalLeftSide } from '../verdict';

/** What a feature of a piece is being cut to. Sizes in pm. */
export type CutAim = {
  /** An external feature gets smaller with every cut, an internal one larger. */
  side: 'external' | 'internal';
  aimPm: number;
  /** The limits themselves, before any guard is taken off. */
  limits: { lowerPm: number; upperPm: number };
  /** Working limits: those less the guard of all uncertainties. */
  noLargerPm: number;
  noSmallerPm: number;
  /** False where the guards eat the whole band. */
  provable: boolean;
  /** What it measures now, by the reading that governs; null while that is not known. */
  now: GoverningSize | null;
  /** The doubt that the limits themselves carry, pm: that of the partner's size. */
  limitStandardPm: number;
  /** The partner it is made to and its size; null where it is made to the drawing. */
  partner: { pieceId: string; featureId: string; size: GoverningSize; fit: FitView } | null;
};

/**
 * What a feature of a piece is cut to: the partner it is promised or tied to, else the partner its last cut
 * was made for or that of its own number, or where no limits are drawn the free one it comes nearest to suiting;
 * else the middle of the drawing's own limits. Null where metal cannot come off it, where another piece is now
 * made to it, or where neither a partner nor two limits say where to stop.
 */
export function cutAim(
  view: Pick<JobView, 'sheet' | 'fits' | 'matesByFeature' | 'cells' | 'cell'>,
  pieceId: string,
  featureId: string,
): CutAim | null {
  const feature = view.sheet.features.find(({ id }) => id === featureId);
  const metal = feature === undefined ? null : metalLeftSide(feature.kind);
  if (feature === undefined || metal === null) return null;
  const cell = view.cell(pieceId, featureId);
  for (const fit of view.fits) {
    const isExternal = fit.externalFeature.id === featureId;
    if (!isExternal && fit.internalFeature.id !== featureId) continue;
    const own = isExternal ? fit.externals : fit.internals;
    const others = isExternal ? fit.internals : fit.externals;
    // What its partner is now made to is made itself.
    const waiting = isExternal ? fit.toBore : fit.toMake;
    if (waiting.some((target) => target.partnerId === pieceId)) return null;
    const partnerId = partnerOf(view, fit, pieceId, featureId, isExternal);
    const partner = others.find(({ piece }) => piece.id === partnerId);
    const made = own.find(({ piece }) => piece.id === pieceId) ?? outside(view, fit, cell);
    if (partner === undefined || partner.size === null || made === null) continue;
    return ofPartner(fit, made, partner, isExternal ? 'external' : 'internal');
  }
  return ofDrawing(view, feature, cell, metal === 'top' ? 'external' : 'internal');
}

/** Promised or decided first, then what was last cut for, then what the pairing chose. */
function partnerOf(
  view: Pick<JobView, 'sheet' | 'matesByFeature' | 'cell'>,
  fit: FitView,
  pieceId: string,
  featureId: string,
  isExternal: boolean,
): string | null {
  const target = (isExternal ? fit.toMake : fit.toBore).find((one) => one.pieceId === pieceId);
  if (target !== undefined) return target.partnerId;
  const mate = view.matesByFeature.get(cellKey(pieceId, featureId));
  const here = mate !== undefined && mate.fitId === fit.fit.id ? mate : null;
  if (here !== null && (here.state === 'final' || here.state === 'locked')) return here.pieceId;
  const last = lastCut(view.sheet.cuts, pieceId, featureId);
  if ((last?.partnerPieceId ?? null) !== null) return last!.partnerPieceId!;
  if (here !== null) return here.state === 'to make' ? null : here.pieceId;
  if (!fit.withoutPartner.includes(pieceId)) return null;
  const isDrawn = view.cell(pieceId, featureId).limitsFrom === 'drawing';
  return (
    ofItsNumber(fit, pieceId, isExternal) ??
    (isDrawn ? null : nearestFree(fit, pieceId, isExternal))
  );
}

/** The measured partner of the same number, if no other made piece has it: what a piece without one was most likely made to. */
function ofItsNumber(fit: FitView, pieceId: string, isExternal: boolean): string | null {
  const [own, others] = isExternal
    ? [fit.externals, fit.internals]
    : [fit.internals, fit.externals];
  const ordinal = own.find(({ piece }) => piece.id === pieceId)?.piece.ordinal;
  const same = others.find(({ piece, size }) => piece.ordinal === ordinal && size !== null);
  return same === undefined || isHeld(fit, same.piece.id) ? null : same.piece.id;
}

/** The measured, free partner that is least too slack: it suits none, and where one were too tight it would be cut. */
function nearestFree(fit: FitView, pieceId: string, isExternal: boolean): string | null {
  const [own, others] = isExternal
    ? [fit.externals, fit.internals]
    : [fit.internals, fit.externals];
  const sizePm = own.find(({ piece }) => piece.id === pieceId)?.size?.valuePm;
  if (sizePm === undefined) return null;
  const isApart = (id: string) =>
    fit.leftOut.has(isExternal ? cellKey(id, pieceId) : cellKey(pieceId, id));
  const free = others.flatMap(({ piece: { id }, size, stillToCut }) =>
    size === null || stillToCut || isHeld(fit, id) || isApart(id)
      ? []
      : [{ id, offPm: Math.abs(size.valuePm - sizePm) }],
  );
  return free.toSorted((a, b) => a.offPm - b.offPm)[0]?.id ?? null;
}

/** Paired, or tied by a person to a piece that is still to make. */
function isHeld(fit: FitView, pieceId: string): boolean {
  return (
    fit.lockedToMake.has(pieceId) ||
    fit.pairs.some((pair) => pair.internalPieceId === pieceId || pair.externalPieceId === pieceId)
  );
}

/** The last cut of a feature on a piece that was not struck out. */
export function lastCut(cuts: readonly Cut[], pieceId: string, featureId: string): Cut | null {
  return cuts
    .filter(
      (cut) =>
        cut.pieceId === pieceId && cut.featureId === featureId && (cut.struckAt ?? null) === null,
    )
    .reduce<Cut | null>(
      (last, cut) => (last === null || cut.ordinal > last.ordinal ? cut : last),
      null,
    );
}

/** A piece that has left the pairing still has a size. */
function outside(
  view: Pick<JobView, 'sheet' | 'cells'>,
  { fit, externalFeature }: FitView,
  cell: Cell,
): FitPiece | null {
  const piece = view.sheet.pieces.find(({ id }) => id === cell.pieceId);
  if (piece === undefined) return null;
  const side = cell.featureId === externalFeature.id ? 'external' : 'internal';
  const { gauges, history } = view.cells;
  const size = governingSize(cell, side, fit.governs, gauges, history);
  return { piece, size, stillToCut: false, toDrawing: false, leftOut: false };
}

function ofPartner(fit: FitView, made: FitPiece, partner: FitPiece, side: CutAim['side']): CutAim {
  const target = targetFor(made, partner, fit.fit, side);
  return {
    side,
    aimPm: target.targetPm,
    limits: target.limits,
    noLargerPm: target.noLargerPm,
    noSmallerPm: target.noSmallerPm,
    provable: target.provable,
    now: made.size,
    limitStandardPm: partner.size!.standardPm,
    partner: {
      pieceId: partner.piece.id,
      featureId: side === 'external' ? fit.internalFeature.id : fit.externalFeature.id,
      size: partner.size!,
      fit,
    },
  };
}

function ofDrawing(
  view: Pick<JobView, 'cells'>,
  feature: Feature,
  cell: Cell,
  side: CutAim['side'],
): CutAim | null {
  const { lowerPm, upperPm } = cell.limits;
  if (cell.limitsFrom !== 'drawing' || lowerPm === null || upperPm === null) return null;
  if (lowerPm >= upperPm) return null;
  const { gauges, history } = view.cells;
  const now = governingSize(cell, side, 'extreme', gauges, history);
  const guardPm = now === null ? 0 : guardPicometres([now.standardPm]);
  return {
    side,
    aimPm: Math.round((lowerPm + upperPm) / 2),
    limits: { lowerPm, upperPm },
    noLargerPm: upperPm - guardPm,
    noSmallerPm: lowerPm + guardPm,
    provable: lowerPm + guardPm <= upperPm - guardPm,
    now,
    limitStandardPm: 0,
    partner: null,
  };
}
