'use client';

import { useState } from 'react';
import { useKeepCut } from '../cut/use-keep-cut';
import type { Bench } from './use-bench';

/**
 * Notes that metal came off: the readings before tell the old size from then on. What was asked of the cut
 * is not known here, so nothing is claimed of it; the Cut screen asks for it.
 */
export function useCut(bench: Bench | null) {
  const { take, trouble, forget } = useKeepCut();
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
  return { note, trouble, busy, forget };
}
