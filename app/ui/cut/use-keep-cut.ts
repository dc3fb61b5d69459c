'use client';

import { useLayoutEffect, useRef, useState } from 'react';
import { uuidv7 } from '@/lib/outbox/ids';
import type { Draft } from '@/lib/outbox/entry';
import { counted, type Cell } from '@/lib/rules/cells';
import type { JobView } from '@/lib/rules/job-view';
import { cutTroubleWords } from '@/lib/text/bench-target';
import { useJob } from '../job/job-provider';

type CutRow = (Draft & { kind: 'cut' })['row'];

/** What is known of a cut besides where and when it was taken. */
export type CutTaken = Omit<
  CutRow,
  'personId' | 'pieceId' | 'featureId' | 'lastReadingId' | 'beforePm' | 'tool'
> & { tool?: string };

/**
 * Keeps a cut on this device: the readings before it tell the old size from then on. It needs no network,
 * and is sent like a reading. A second call while one is being kept does nothing.
 *
 * `take` resolves when the job's view shows the cut too, so that no reading is held against the size before it.
 */
export function useKeepCut() {
  const { view, keep } = useJob();
  const [trouble, setTrouble] = useState<string | null>(null);
  const busy = useRef(false);
  const awaited = useRef<{ id: string; seen: () => void } | null>(null);
  useLayoutEffect(() => {
    if (awaited.current === null || !hasCut(view, awaited.current.id)) return;
    awaited.current.seen();
    awaited.current = null;
  });

  async function take(cell: Cell, personId: string | null, taken: CutTaken): Promise<boolean> {
    const before = cell.readings.at(-1) ?? cell.earlier.at(-1);
    if (before === undefined || busy.current) return false;
    busy.current = true;
    setTrouble(null);
    const id = uuidv7();
    const shown = new Promise<void>((seen) => {
      awaited.current = { id, seen };
    });
    try {
      await keep({
        kind: 'cut',
        jobId: view.sheet.job.id,
        id,
        row: {
          ...taken,
          personId,
          pieceId: cell.pieceId,
          featureId: cell.featureId,
          lastReadingId: before.id,
          beforePm: cell.size?.valuePm ?? counted(cell.readings).at(-1)?.valuePm ?? before.valuePm,
          tool: taken.tool ?? '',
        },
      });
      await shown;
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

function hasCut({ sheet }: JobView, id: string): boolean {
  return sheet.cuts.some((cut) => cut.id === id);
}
