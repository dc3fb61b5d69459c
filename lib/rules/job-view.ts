import type { Feature } from '@/lib/schema/feature';
import type { Part, Piece } from '@/lib/schema/part';
import type { JobSheet } from '@/lib/schema/sheet';
import { cellKey, cellsOf, emptyCell, type Cell, type Cells } from './cells';
import type { CellsMemory } from './cells-memory';
import { decisionsOf, type Decision } from './decisions';
import { fitView, type FitView } from './fit-view';
import { nextStep, type NextStep } from './next-step';
import { progressOf, type Progress } from './progress';
import { runView, type RunView } from './run-view';
import { verdictOf } from './verdict';

/** The partner of a piece on the board. */
export type Mate = {
  pieceId: string;
  fitId: string;
  state: 'final' | 'locked' | 'chosen' | 'to make';
};

/** Everything the sheets of a job say, worked out from what is kept. */
export type JobView = {
  sheet: JobSheet;
  parts: PartView[];
  cells: Cells;
  fits: FitView[];
  runs: RunView[];
  /** Partners by `cellKey` of piece and feature: a part may be in several fits. */
  matesByFeature: Map<string, Mate>;
  progress: Progress;
  decisions: Decision[];
  next: NextStep | null;
  /** The cell of a feature on a piece, empty where nothing was read. */
  cell: (pieceId: string, featureId: string) => Cell;
};

export type PartView = { part: Part; pieces: Piece[]; features: Feature[] };

/**
 * Works out a whole job: sizes, verdicts, pairs, targets, runs, what to decide and what is next.
 *
 * A feature the drawing leaves open takes its limits from its partner's size where a fit names one
 * (its liner less 0.008 to 0.012). Pure: the same sheet gives the same view on every device, on the
 * network or off it. Cost: O(readings) and the pairing of each fit; with the memory of the view before, the
 * readings that changed instead of all (`rememberedJobView`).
 */
export function jobView(sheet: JobSheet, memory?: CellsMemory): JobView {
  const cells = cellsOf(sheet, memory);
  const features = new Map(live(sheet.features).map((feature) => [feature.id, feature]));
  const parts = partViews(sheet);
  const fits = live(sheet.fits).flatMap(
    (fit) => fitView(fit, features, sheet.pieces, sheet.pairs, cells, sheet.gauges) ?? [],
  );
  const matesByFeature = matesOf(fits);
  for (const fit of fits) takeLimitsFromPartners(fit, matesByFeature, cells);
  const runs = live(sheet.runs).flatMap(
    (run) => runView(run, features, sheet.pieces, sheet.runEvents, cells) ?? [],
  );
  const stillToCut = new Set(
    fits.flatMap((fit) =>
      [...fit.internals, ...fit.externals].filter((p) => p.stillToCut).map((p) => p.piece.id),
    ),
  );
  const cell = (pieceId: string, featureId: string): Cell => {
    const known = cells.byKey.get(cellKey(pieceId, featureId));
    if (known !== undefined) return known;
    const feature = features.get(featureId);
    if (feature === undefined) throw new RangeError(`jobView has no feature ${featureId}`);
    return withPartnerLimits(emptyCell(pieceId, feature), fits, matesByFeature);
  };
  const view = { sheet, parts, cells, fits, runs, matesByFeature, cell };
  return {
    ...view,
    progress: progressOf(sheet, cells, stillToCut),
    decisions: decisionsOf(view),
    next: nextStep(view),
  };
}

function partViews(sheet: JobSheet): PartView[] {
  return live(sheet.parts)
    .sort((a, b) => a.position - b.position)
    .map((part) => ({
      part,
      pieces: live(sheet.pieces)
        .filter((piece) => piece.partId === part.id)
        .sort((a, b) => a.ordinal - b.ordinal),
      features: live(sheet.features)
        .filter((feature) => feature.partId === part.id)
        .sort((a, b) => a.position - b.position),
    }));
}

function live<Thing extends { struckAt: string | null }>(things: readonly Thing[]): Thing[] {
  return things.filter((thing) => thing.struckAt === null);
}

/** Partners by piece and feature; where two fits name a feature, that of the first. */
function matesOf(fits: readonly FitView[]): Map<string, Mate> {
  const matesByFeature = new Map<string, Mate>();
  const put = (pieceId: string, featureId: string, mate: Mate) => {
    const key = cellKey(pieceId, featureId);
    if (!matesByFeature.has(key)) matesByFeature.set(key, mate);
  };
  for (const { fit, internalFeature, externalFeature, pairs, toMake, toBore } of fits) {
    const tie = (internalId: string, externalId: string, state: Mate['state']) => {
      put(internalId, internalFeature.id, { pieceId: externalId, fitId: fit.id, state });
      put(externalId, externalFeature.id, { pieceId: internalId, fitId: fit.id, state });
    };
    for (const p of pairs) tie(p.internalPieceId, p.externalPieceId, p.state);
    for (const t of toMake) tie(t.partnerId, t.pieceId, 'to make');
    for (const t of toBore) tie(t.pieceId, t.partnerId, 'to make');
  }
  return matesByFeature;
}

/** Gives each measured external cell that the drawing leaves open its limits from its partner, and a verdict. */
function takeLimitsFromPartners(
  view: FitView,
  mates: ReadonlyMap<string, Mate>,
  cells: Cells,
): void {
  for (const { piece } of view.externals) {
    const key = cellKey(piece.id, view.externalFeature.id);
    const cell = cells.byKey.get(key);
    // Where two fits name the feature, the one its partner is in gives the limits.
    if (cell === undefined || mates.get(key)?.fitId !== view.fit.id) continue;
    withPartnerLimits(cell, [view], mates);
    if (cell.limitsFrom !== 'partner' || cell.size === null) continue;
    const chosen = view.pairs.find((pair) => pair.externalPieceId === piece.id);
    const standardPm = chosen?.standardPm ?? cell.size.standardPm;
    const { kind } = view.externalFeature;
    const size = { valuePm: cell.size.valuePm, standardPm };
    cell.verdict = verdictOf(size, cell.limits, kind);
  }
}

function withPartnerLimits(
  cell: Cell,
  fits: readonly FitView[],
  mates: ReadonlyMap<string, Mate>,
): Cell {
  if (cell.limitsFrom !== 'open') return cell;
  const mate = mates.get(cellKey(cell.pieceId, cell.featureId));
  const view = fits.find(({ fit }) => fit.id === mate?.fitId);
  if (mate === undefined || view?.externalFeature.id !== cell.featureId) return cell;
  const partner = view.internals.find(({ piece }) => piece.id === mate.pieceId);
  if (partner === undefined || partner.size === null) return cell;
  cell.limitsFrom = 'partner';
  cell.limits = {
    lowerPm: partner.size.valuePm - view.fit.maxPm,
    upperPm: partner.size.valuePm - view.fit.minPm,
  };
  return cell;
}
