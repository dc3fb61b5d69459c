'use client';

import {
  startTransition,
  useCallback,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { localInstant } from '@/lib/outbox/local-instant';
import type { Draft } from '@/lib/outbox/entry';
import { OutboxError } from '@/lib/outbox/trouble';
import { uuidv7 } from '@/lib/outbox/ids';
import type { FreshEntry } from '@/lib/rules/entry-cell';
import type { JobView } from '@/lib/rules/job-view';
import { useJob } from '../job/job-provider';
import { addUnkept, dropUnkept, onUnkept, unkeptOf } from './unkept';

/** Something entered here that the job's own view does not hold yet. */
export type Fresh = {
  entry: FreshEntry;
  draft: Extract<Draft, { kind: 'reading' | 'correction' }> & { id: string };
  /** The disk of this device has it. It stays here until the job's view shows it. */
  kept: boolean;
  /** The code of what went wrong when it could not be kept; null otherwise. */
  failure: string | null;
  /** Its place among what was entered here. */
  order: number;
};

type ReadingRow = (FreshEntry & { kind: 'reading' })['row'];
type CorrectionRow = (FreshEntry & { kind: 'correction' })['row'];

/** Fields of a correction that most kinds do not need. */
export const plainCorrection = {
  reason: '',
  toPieceId: null,
  toFeatureId: null,
  toStation: null,
  toDirection: null,
  text: null,
  unit: null,
  valuePm: null,
  resolutionPm: null,
} as const;

export type FreshList = {
  list: readonly Fresh[];
  reading: (row: ReadingRow) => FreshEntry;
  correction: (row: CorrectionRow) => FreshEntry;
  /** Keeps what could not be kept again, under the same id. */
  again: (id: string) => void;
};

/**
 * What was entered here and the job's view does not show yet: on screen in the same frame, gone from here when it
 * is in the view, which follows a moment later. What the device could not keep stays, loudly, until it is.
 */
export function useFresh(): FreshList {
  const { view, keep } = useJob();
  const jobId = view.sheet.job.id;
  const [all, setAll] = useState<readonly Fresh[]>([]);
  const latestView = useRef(view);
  useLayoutEffect(() => {
    latestView.current = view;
  }, [view]);
  const failed = useSyncExternalStore(
    onUnkept,
    useCallback(() => unkeptOf(jobId), [jobId]),
    () => nothing,
  );
  const list = useMemo(() => {
    const waiting = all.filter((one) => !(one.kept && isIn(view, one)));
    if (failed.length > 0) return [...waiting, ...failed].sort((a, b) => a.order - b.order);
    return waiting.length === all.length ? all : waiting;
  }, [all, failed, view]);

  const send = useCallback(
    (one: Fresh) => {
      const { draft } = one;
      keep(draft).then(
        () =>
          startTransition(() =>
            setAll((old) =>
              old
                .filter((other) => !(other.kept && isIn(latestView.current, other)))
                .map((other) => (other.draft.id === draft.id ? { ...other, kept: true } : other)),
            ),
          ),
        (error: unknown) => {
          const failure = error instanceof OutboxError ? error.code : 'outbox/storage-lost';
          addUnkept(jobId, { ...one, failure });
          setAll((old) => old.filter((other) => other.draft.id !== draft.id));
        },
      );
    },
    [keep, jobId],
  );

  const put = useCallback(
    (entry: FreshEntry, deviceTime: string): FreshEntry => {
      const { id } = entry;
      const draft: Fresh['draft'] =
        entry.kind === 'reading'
          ? { kind: 'reading', jobId, id, deviceTime, row: entry.row }
          : { kind: 'correction', jobId, id, deviceTime, row: entry.row };
      const one: Fresh = { entry, draft, kept: false, failure: null, order: nextOrder() };
      setAll((old) => [...old, one]);
      // Not within the key's own event: the reading is drawn first, and the disk has it no later for that.
      setTimeout(() => send(one), 0);
      return entry;
    },
    [jobId, send],
  );

  const reading = useCallback(
    (row: ReadingRow) => {
      const deviceTime = now();
      return put({ kind: 'reading', id: uuidv7(), deviceTime, row }, deviceTime);
    },
    [put],
  );
  const correction = useCallback(
    (row: CorrectionRow) => put({ kind: 'correction', id: uuidv7(), row }, now()),
    [put],
  );
  const again = useCallback(
    (id: string) => {
      const one = unkeptOf(jobId).find(({ draft }) => draft.id === id);
      if (one === undefined) return;
      const anew = { ...one, failure: null };
      setAll((old) => [...old, anew]);
      dropUnkept(jobId, id);
      send(anew);
    },
    [jobId, send],
  );
  return useMemo(() => ({ list, reading, correction, again }), [list, reading, correction, again]);
}

const nothing: readonly Fresh[] = [];

let orders = 0;
function nextOrder(): number {
  orders += 1;
  return orders;
}

/** The newest rows come last, so what was just entered is found at once. */
function isIn({ sheet }: JobView, { entry }: Fresh): boolean {
  const rows: readonly { id: string }[] =
    entry.kind === 'reading' ? sheet.readings : sheet.corrections;
  return rows.findLast(({ id }) => id === entry.id) !== undefined;
}

function now(): string {
  const atMs = Date.now();
  return localInstant(atMs, -new Date(atMs).getTimezoneOffset());
}
