import type { Decision } from '@/lib/rules/decisions';
import type { JobView } from '@/lib/rules/job-view';
import type { Shown } from '@/lib/text/shown-size';
import {
  cellDecisionWords,
  noPartnerWords,
  pairChangedWords,
  type MarkedSentence,
} from '@/lib/text/step';
import { figureOf, resolutionOf } from './cell-shown';

/** The decisions of a job in words, in the order of the board. */
export function decisionWords(view: JobView, shown: Shown): (MarkedSentence & { key: string })[] {
  return view.decisions.map((decision) => ({
    ...wordsOf(decision, view, shown),
    key: JSON.stringify(decision),
  }));
}

function wordsOf(decision: Decision, view: JobView, shown: Shown): MarkedSentence {
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const fitOf = (id: string) => view.fits.find((fit) => fit.fit.id === id)!;
  if (decision.kind === 'no partner') {
    return noPartnerWords(markOf(decision.pieceId), fitOf(decision.fitId).fit.name);
  }
  if (decision.kind === 'pair changed') {
    const fit = fitOf(decision.fitId);
    const pair = fit.pairs.find((candidate) => candidate.pair?.id === decision.pairId)!;
    const cell = view.cell(pair.internalPieceId, fit.internalFeature.id);
    return pairChangedWords(
      { internal: markOf(pair.internalPieceId), external: markOf(pair.externalPieceId) },
      pair.flag?.was?.clearancePm ?? null,
      pair.flag?.now?.clearancePm ?? null,
      resolutionOf(view, cell, fit.internalFeature),
      shown,
    );
  }
  const feature = view.sheet.features.find((candidate) => candidate.id === decision.featureId)!;
  const cell = view.cell(decision.pieceId, decision.featureId);
  return cellDecisionWords(
    {
      ...decision,
      mark: markOf(decision.pieceId),
      featureName: feature.name,
      featureKind: feature.kind,
      size: figureOf(view, cell, feature, shown),
      limitPm: decision.side === 'bottom' ? cell.limits.lowerPm : cell.limits.upperPm,
      resolutionPm: resolutionOf(view, cell, feature),
    },
    shown,
  );
}
