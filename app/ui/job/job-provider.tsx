'use client';

import {
  createContext,
  startTransition,
  useCallback,
  useContext,
  useDeferredValue,
  useEffect,
  useMemo,
  useState,
  useSyncExternalStore,
  type ReactNode,
} from 'react';
import { followJob } from '@/lib/outbox/browser-live';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import type { Draft, Entry } from '@/lib/outbox/entry';
import { overlayEntries } from '@/lib/outbox/sheet-overlay';
import { applyChange } from '@/lib/outbox/sheet-reducer';
import { emptySnapshot, entriesFor, type Snapshot } from '@/lib/outbox/snapshot';
import type { JobView } from '@/lib/rules/job-view';
import { rememberedJobView } from '@/lib/rules/remembered-job-view';
import type { Change } from '@/lib/schema/change';
import type { JobSheet } from '@/lib/schema/sheet';
import type { Shown } from '@/lib/text/shown-size';
import { usePersonChoice, type PersonChoice } from './use-person-choice';
import { useShelf } from './use-shelf';

/** What this device and this shop have chosen, with nothing left open. */
export type Chosen = Shown & { hand: 'right' | 'left'; personId: string | null };

type Job = {
  view: JobView;
  chosen: Chosen;
  /** Who measures here, and the way to choose another. */
  person: PersonChoice;
  /** Ids of entries that are on this device and not in the book yet. */
  pending: ReadonlySet<string>;
  outbox: Snapshot;
  /** Keeps an entry on this device; it is in `view` at once, and resolves when the disk has it. */
  keep: (draft: Draft) => Promise<Entry>;
  /** Applies the row an API answer brought, without waiting for the live feed. */
  apply: (thing: Change['thing'], row: Record<string, unknown> & { id: string }) => void;
};

const JobContext = createContext<Job | null>(null);

/** Holds one job for all its sheets: what the server sent, what the feed brings, what this device adds. */
export function JobProvider(props: { sheet: JobSheet; chosen: Chosen; children: ReactNode }) {
  const { children } = props;
  const person = usePersonChoice(props.chosen.personId);
  const chosen = useMemo(
    () => ({ ...props.chosen, personId: person.personId }),
    [props.chosen, person.personId],
  );
  const [book, setBook] = useState(props.sheet);
  const jobId = props.sheet.job.id;

  // Coming back to a job through a link brings a newer sheet than the one in memory.
  const [seenSeq, setSeenSeq] = useState(props.sheet.seq);
  if (props.sheet.seq > seenSeq) {
    setSeenSeq(props.sheet.seq);
    if (props.sheet.seq > book.seq) setBook(props.sheet);
  }

  const after = props.sheet.seq;
  useEffect(
    () =>
      followJob({
        jobId,
        after,
        // What others do must never hold up a key.
        onChange: (change) => startTransition(() => setBook((old) => applyChange(old, change))),
      }),
    [jobId, after],
  );

  useShelf(book, chosen);
  const outbox = useOutbox();
  const entries = entriesFor(outbox, jobId);
  const { sheet, pending } = useMemo(() => overlayEntries(book, entries), [book, entries]);
  const [look] = useState(rememberedJobView);
  const view = useMemo(() => look(sheet), [look, sheet]);

  const keep = useCallback((draft: Draft) => browserOutbox().keep(draft), []);
  const apply = useCallback<Job['apply']>((thing, row) => {
    // The row is placed by its version; the sheet stays true at the number of the feed it has heard.
    setBook((old) => ({ ...applyChange(old, changeFrom(old, thing, row)), seq: old.seq }));
  }, []);
  const job = useMemo(
    () => ({ view, chosen, person, pending, outbox, keep, apply }),
    [view, chosen, person, pending, outbox, keep, apply],
  );
  return <JobContext.Provider value={job}>{children}</JobContext.Provider>;
}

/** The job of the sheet this component stands on. */
export function useJob(): Job {
  const job = useContext(JobContext);
  if (job === null) throw new Error('useJob requires a JobProvider above it');
  return job;
}

/**
 * What this device holds that the book does not have yet. It follows a moment behind, so that the page is worked
 * out anew between two keys and not before one: what was just entered is on screen without it (`useFresh`).
 */
function useOutbox(): Snapshot {
  const now = useSyncExternalStore(
    useCallback((listener) => browserOutbox().subscribe(listener), []),
    () => browserOutbox().snapshot(),
    () => emptySnapshot,
  );
  return useDeferredValue(now);
}

function changeFrom(
  sheet: JobSheet,
  thing: Change['thing'],
  row: Record<string, unknown> & { id: string },
): Change {
  return {
    seq: sheet.seq + 1,
    at: new Date().toISOString(),
    personId: null,
    deviceId: '',
    jobId: sheet.job.id,
    thing,
    thingId: row.id,
    act: 'changed',
    after: row,
  };
}
