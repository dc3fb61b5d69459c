'use client';

import { strikeTroubleWords } from '@/lib/text/bench-where';
import { useJob } from './job-provider';
import { useKeepNoted } from './use-keep-noted';

/** Strikes out a cut or an event of a run, or puts it back where it is struck out already: kept like a reading. */
export function useStrike(thing: 'cut' | 'runEvent') {
  const { view, chosen } = useJob();
  const { keepNoted, trouble, busy } = useKeepNoted(strikeTroubleWords);
  const strike = ({ id, struckAt }: { id: string; struckAt: string | null }) =>
    keepNoted({
      kind: 'strike',
      jobId: view.sheet.job.id,
      row: { thing, thingId: id, struck: struckAt === null, personId: chosen.personId },
    });
  return { strike, trouble, busy };
}
