'use client';

import { useState } from 'react';
import { browserApi } from '@/lib/outbox/browser-api';
import { uuidv7 } from '@/lib/outbox/ids';
import { ProblemError } from '@/lib/outbox/problem-error';
import { counted } from '@/lib/rules/cells';
import type { Cut } from '@/lib/schema/fit';
import { cutTroubleWords } from '@/lib/text/bench-target';
import { useJob } from '../job/job-provider';
import type { Bench } from './use-bench';

/**
 * Notes that metal came off: the readings before tell the old size from then on. What was asked of the cut
 * is not known here, so nothing is claimed of it.
 *
 * It needs the notebook: where that does not answer, nothing is changed and a sentence says so.
 */
export function useCut(bench: Bench | null) {
  const { apply } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  async function note(spring: boolean): Promise<boolean> {
    if (bench === null || busy) return false;
    const { cell, view, piece, feature } = bench;
    const before = cell.readings.at(-1);
    if (before === undefined) return false;
    const ordinals = view.sheet.cuts
      .filter((cut) => cut.pieceId === piece.id && cut.featureId === feature.id)
      .map((cut) => cut.ordinal);
    setBusy(true);
    setTrouble(null);
    try {
      const row = await browserApi().send<Cut>('POST', '/api/v1/cuts', {
        id: uuidv7(),
        jobId: view.sheet.job.id,
        pieceId: piece.id,
        featureId: feature.id,
        ordinal: Math.max(0, ...ordinals) + 1,
        lastReadingId: before.id,
        spring,
        askedPm: 0,
        beforePm: cell.size?.valuePm ?? counted(cell.readings).at(-1)?.valuePm ?? before.valuePm,
        afterPm: null,
        tool: '',
      });
      apply('cut', row);
      return true;
    } catch (error) {
      setTrouble(cutTroubleWords(error instanceof ProblemError ? error.status : null));
      return false;
    } finally {
      setBusy(false);
    }
  }
  return { note, trouble, busy, forget: () => setTrouble(null) };
}
