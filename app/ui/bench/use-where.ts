'use client';

import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { entryOrder, type EntryCell, type EntryOrder } from '@/lib/rules/entry-order';
import { entryStart } from '@/lib/rules/entry-start';
import type { JobView } from '@/lib/rules/job-view';
import { cameBack } from './came-back';
import { recall, remember } from './device-memory';
import { useMemory } from './use-memory';

export type Asked = { pieceId: string | null; featureId: string | null };

export type Where = {
  /** The piece and the feature on the bench; null in a job without features. */
  cell: EntryCell | null;
  goTo: (cell: EntryCell) => void;
  /** It opened where this device had stopped. */
  cameBack: boolean;
  order: EntryOrder;
  setOrder: (order: EntryOrder) => void;
  /** The piece or feature before or after this one, in the order chosen. */
  beside: (by: 1 | -1, pass?: (cell: EntryCell) => boolean) => EntryCell | null;
};

/** Which piece and feature are on the bench; the address says so too, and this device remembers it. */
export function useWhere(view: JobView, asked: Asked): Where {
  const jobId = view.sheet.job.id;
  const [chosen, setChosen] = useState<EntryCell | null>(null);
  const [isBack, setBack] = useState(false);
  const [orderWord, sayOrder] = useMemory(`order:${jobId}`);
  const order: EntryOrder =
    orderWord === 'this feature on every piece' ? orderWord : 'all of a piece';

  const settle = useCallback(
    (cell: EntryCell) => {
      setChosen(cell);
      remember(`stop:${jobId}`, JSON.stringify(cell));
      remember(`act:${jobId}`, String(Date.now()));
    },
    [jobId],
  );
  /** The address of where it started, still to be put; not when somebody has gone on since. */
  const putting = useRef<number | undefined>(undefined);
  const goTo = useCallback(
    (cell: EntryCell) => {
      window.clearTimeout(putting.current);
      settle(cell);
      putAddress(cell);
    },
    [settle],
  );

  // Where this device stopped is known only in the browser; from then on nothing moves by itself.
  const stands = chosen !== null && isThere(view, chosen);
  const first = useMemo(
    () => (stands ? null : entryStart(view, { asked, stopped: null })),
    [view, asked, stands],
  );
  useEffect(() => {
    if (chosen !== null) return;
    const stopped = stopOf(recall(`stop:${jobId}`));
    const start = entryStart(view, { asked, stopped });
    const isSame = start?.pieceId === stopped?.pieceId && start?.featureId === stopped?.featureId;
    if (start === null) return;
    // oxlint-disable-next-line react/set-state-in-effect -- it is known only once the page is in the browser
    if (isSame && cameBack(asked, jobId)) setBack(true);
    settle(start);
    // Not while the page comes alive: the router learns of addresses that are put after it is there, and
    // without its mark on this one the way back to it would lead nowhere.
    const { pathname } = window.location;
    putting.current = window.setTimeout(() => {
      if (window.location.pathname === pathname) putAddress(start);
    }, 0);
  }, [chosen, view, asked, jobId, settle]);

  const cell = stands ? chosen : first;
  const beside = useCallback(
    (by: 1 | -1, pass?: (other: EntryCell) => boolean) =>
      cell === null ? null : entryOrder(view.parts, order, cell, by, pass),
    [view.parts, order, cell],
  );
  return useMemo(
    () => ({ cell, goTo, cameBack: isBack, order, setOrder: sayOrder, beside }),
    [cell, goTo, isBack, order, sayOrder, beside],
  );
}

/** The piece and the feature on the bench, in the address of the page. */
function putAddress({ pieceId, featureId }: EntryCell): void {
  const address = new URL(window.location.href);
  address.searchParams.set('piece', pieceId);
  address.searchParams.set('feature', featureId);
  if (address.href !== window.location.href) window.history.replaceState(null, '', address);
}

function isThere(view: JobView, cell: EntryCell): boolean {
  return view.parts.some(
    ({ pieces, features }) =>
      pieces.some(({ id }) => id === cell.pieceId) &&
      features.some(({ id }) => id === cell.featureId),
  );
}

function stopOf(word: string | null): EntryCell | null {
  try {
    const stop: unknown = JSON.parse(word ?? 'null');
    return typeof stop === 'object' && stop !== null && 'pieceId' in stop && 'featureId' in stop
      ? { pieceId: String(stop.pieceId), featureId: String(stop.featureId) }
      : null;
  } catch {
    return null;
  }
}
