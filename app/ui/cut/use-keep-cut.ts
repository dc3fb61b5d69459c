'use client';

import { useRef, useState } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import type { Draft } from '@/lib/outbox/entry';
import { counted, type Cell } from '@/lib/rules/cells';
import { cutTroubleWords } from '@/lib/text/bench-target';
import { useJob } from '../job/job-provider';

type CutRow = (Draft & { kind: 'cut' })['row'];

/** What is known of a cut besides where and when it was taken. */
export type CutTaken = Omit<
  CutRow,
  'personId' | 'pieceId' | 'featureId' | 'lastReadingId' | 'beforePm' | 'tool'
>;

/**
 * Keeps a cut on this device: the readings before it tell the old size from then on. It needs no network,
 * and is sent like a reading. A second call while one is being kept does nothing.
 */
export function useKeepCut() {
  const { view, chosen, keep } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const busy = useRef(false);

  async function take(cell: Cell, personId: string | null, taken: CutTaken): Promise<boolean> {
    const before = cell.readings.at(-1) ?? cell.earlier.at(-1);
    if (before === undefined || busy.current) return false;
    busy.current = true;
    setTrouble(null);
    try {
      await keep({
        kind: 'cut',
        jobId: view.sheet.job.id,
        id: uuidv7(),
        row: {
          ...taken,
          personId: personId ?? chosen.personId,
          pieceId: cell.pieceId,
          featureId: cell.featureId,
          lastReadingId: before.id,
          beforePm: cell.size?.valuePm ?? counted(cell.readings).at(-1)?.valuePm ?? before.valuePm,
          tool: '',
        },
      });
      return true;
    } catch {
      setTrouble(cutTroubleWords);
      return false;
    } finally {
      busy.current = false;
    }
  }
  return { take, trouble, forget: () => setTrouble(null) };
}
