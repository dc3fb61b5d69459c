'use client';

import { useCallback, useMemo, useState } from 'react';
import { localInstant } from '@/lib/outbox/local-instant';
import type { Draft } from '@/lib/outbox/entry';
import { OutboxError } from '@/lib/outbox/trouble';
import { uuidv7 } from '@/lib/outbox/ids';
import type { FreshEntry } from '@/lib/rules/entry-cell';
import { useJob } from '../job/job-provider';

/** Something entered here that the job's own view does not hold yet. */
export type Fresh = {
  entry: FreshEntry;
  draft: Exclude<Draft, { kind: 'cut' }> & { id: string };
  /** Null while it is being kept; the code of what went wrong when it was not. */
  failure: string | null;
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
 * What was entered here and is not on the disk yet: on screen in the same frame, gone from here when the
 * outbox shows it itself. What the device could not keep stays, loudly, until it is.
 */
export function useFresh(): FreshList {
  const { view, keep } = useJob();
  const jobId = view.sheet.job.id;
  const [list, setList] = useState<readonly Fresh[]>([]);

  const send = useCallback(
    (draft: Fresh['draft']) => {
      keep(draft).then(
        () => setList((old) => old.filter(({ draft: { id } }) => id !== draft.id)),
        (error: unknown) => {
          const failure = error instanceof OutboxError ? error.code : 'outbox/storage-lost';
          setList((old) =>
            old.map((one) => (one.draft.id === draft.id ? { ...one, failure } : one)),
          );
        },
      );
    },
    [keep],
  );

  const put = useCallback(
    (entry: FreshEntry, deviceTime: string): FreshEntry => {
      const { id } = entry;
      const draft: Fresh['draft'] =
        entry.kind === 'reading'
          ? { kind: 'reading', jobId, id, deviceTime, row: entry.row }
          : { kind: 'correction', jobId, id, deviceTime, row: entry.row };
      setList((old) => [...old, { entry, draft, failure: null }]);
      send(draft);
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
      const failed = list.find(({ draft }) => draft.id === id);
      if (failed === undefined) return;
      setList((old) => old.map((one) => (one.draft.id === id ? { ...one, failure: null } : one)));
      send(failed.draft);
    },
    [list, send],
  );
  return useMemo(() => ({ list, reading, correction, again }), [list, reading, correction, again]);
}

function now(): string {
  const atMs = Date.now();
  return localInstant(atMs, -new Date(atMs).getTimezoneOffset());
}
