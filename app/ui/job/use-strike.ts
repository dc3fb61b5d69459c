'use client';

import { useState } from 'react';
import { strikeTroubleWords } from '@/lib/text/bench-where';
import { useJob } from './job-provider';

/**
 * Strikes out a cut or an event of a run, or puts it back where it is struck out already. It is kept on this
 * device like a reading, with or without a network, and seen at once.
 */
export function useStrike(thing: 'cut' | 'runEvent') {
  const { view, keep, chosen } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const strike = async ({ id, struckAt }: { id: string; struckAt: string | null }) => {
    setBusy(true);
    setTrouble(null);
    try {
      await keep({
        kind: 'strike',
        jobId: view.sheet.job.id,
        row: { thing, thingId: id, struck: struckAt === null, personId: chosen.personId },
      });
    } catch {
      setTrouble(strikeTroubleWords);
    } finally {
      setBusy(false);
    }
  };
  return { strike, trouble, busy };
}
