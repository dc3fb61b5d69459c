import type { PairLook } from '@/lib/schema/fit';
import type { Clearance, FitView } from './fit-view';
import type { JobView } from './job-view';
import { pairNow } from './pair-now';

/**
 * What is kept when a person makes a pair final or lets it stand: the clearance and its expanded uncertainty
 * (`clearanceDoubt`) as they are, what was wanted, and all that both sizes stand on.
 */
export function pairLook(
  view: Pick<JobView, 'cells' | 'sheet'>,
  { fit, every }: Pick<FitView, 'fit' | 'every'>,
  pair: Pick<Clearance, 'internalPieceId' | 'externalPieceId' | 'expandedPm'>,
  by: Pick<PairLook, 'act' | 'at' | 'personId'>,
): PairLook {
  const internal = every.get(pair.internalPieceId);
  const external = every.get(pair.externalPieceId);
  const now =
    internal === undefined || external === undefined
      ? null
      : pairNow(fit, view.cells, view.sheet.gauges)(null, internal, external);
  const sized = now !== null && now.internal !== null && now.external !== null;
  return {
    at: by.at,
    act: by.act,
    maxPm: fit.maxPm,
    minPm: fit.minPm,
    governs: fit.governs,
    external: now?.external ?? null,
    internal: now?.internal ?? null,
    personId: by.personId,
    clearancePm: sized ? now.internal!.sizePm - now.external!.sizePm : null,
    externalFate: now?.fate.external ?? null,
    internalFate: now?.fate.internal ?? null,
    uncertaintyPm: sized ? Math.round(pair.expandedPm) : null,
  };
}
