'use client';

import { useState } from 'react';
import { entriesFor } from '@/lib/outbox/snapshot';
import type { Cut } from '@/lib/schema/fit';
import { useKeepCut } from '../cut/use-keep-cut';
import { useJob } from '../job/job-provider';
import { useStrike } from '../job/use-strike';
import type { Bench } from './use-bench';

/**
 * Notes that metal came off: the readings before tell the old size from then on. What was asked of the cut
 * is not known here, so nothing is claimed of it; the Cut screen asks for it. What was noted on this page and
 * nothing was read after can be struck out: the readings before it count again.
 */
export function useCut(bench: Bench | null) {
  const { outbox } = useJob();
  const { take, trouble, forget } = useKeepCut();
  const { strike, trouble: unkept } = useStrike('cut');
  const [busy, setBusy] = useState(false);

  async function note(spring: boolean): Promise<boolean> {
    if (bench === null || busy) return false;
    const { cell, chosen, partner } = bench;
    if (cell.readings.length === 0) return false;
    setBusy(true);
    const noted = await take(cell, chosen.personId, {
      spring,
      askedPm: 0,
      partnerPieceId: partner?.piece.id ?? null,
    });
    setBusy(false);
    return noted;
  }

  /** The cut of this page that nothing was read after; null where there is none. */
  function lastNoted(): Cut | null {
    if (bench === null || bench.cell.readings.length > 0) return null;
    const { cell, view } = bench;
    const last = view.sheet.cuts
      .filter(
        ({ pieceId, featureId, struckAt }) =>
          pieceId === cell.pieceId && featureId === cell.featureId && struckAt === null,
      )
      .toSorted((a, b) => a.ordinal - b.ordinal)
      .at(-1);
    const isFromHere = entriesFor(outbox, view.sheet.job.id).some(({ id }) => id === last?.id);
    return isFromHere ? last! : null;
  }

  return { note, lastNoted, strike, trouble: trouble ?? unkept, busy, forget };
}
