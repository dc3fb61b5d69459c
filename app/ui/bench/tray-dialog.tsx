'use client';

import { useCallback, useEffect, useState } from 'react';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import type { Entry } from '@/lib/outbox/entry';
import type { JobView } from '@/lib/rules/job-view';
import type { Cut } from '@/lib/schema/fit';
import type { RunEvent } from '@/lib/schema/run';
import { placeWords } from '@/lib/text/bench-place';
import { awaySays, traySays, trayTitle, trayWords, type TrayFacts } from '@/lib/text/tray-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { BenchDialog } from './bench-dialog';
import styles from './list.module.css';

type Props = { tray: readonly Entry[]; onClose: () => void };

/** What the notebook would not take: each stays here until a person has settled it, and what was put away after. */
export function TrayDialog({ tray, onClose }: Props) {
  const away = usePutAway(tray);
  return (
    <BenchDialog title={trayWords.title} onClose={onClose}>
      {tray.length === 0 ? <p className={styles.empty}>{trayWords.none}</p> : null}
      {tray.map((entry) => (
        <TrayEntry key={entry.id} entry={entry} />
      ))}
      {away.list.length > 0 && (
        <section className={styles.section} aria-label={trayWords.awayTitle}>
          <h3>{trayWords.awayTitle}</h3>
          {away.list.map((entry) => (
            <AwayEntry key={entry.id} entry={entry} onSent={away.look} />
          ))}
        </section>
      )}
    </BenchDialog>
  );
}

/** What a person has put away on this device, of any job, newest first; looked up again when the tray changes. */
function usePutAway(tray: readonly Entry[]) {
  const [list, setList] = useState<readonly Entry[]>([]);
  const look = useCallback(() => {
    browserOutbox()
      .copies()
      .then(
        (copies) => setList(copies.filter(({ state }) => state === 'set aside').reverse()),
        // A disk that cannot be read is told of over the Bench.
        () => undefined,
      );
  }, []);
  useEffect(look, [look, tray]);
  return { list, look };
}

function useSettle() {
  const [trouble, setTrouble] = useState(false);
  const settle = (act: Promise<void>, done?: () => void) => {
    setTrouble(false);
    act.then(done, () => setTrouble(true));
  };
  return {
    settle,
    trouble: trouble && (
      <p className={styles.says} role="alert">
        {trayWords.trouble}
      </p>
    ),
  };
}

function TrayEntry({ entry }: { entry: Entry }) {
  const { view } = useJob();
  const [reason, setReason] = useState('');
  const { settle, trouble } = useSettle();
  return (
    <section className={styles.section}>
      <h3>{trayTitle(factsOf(view, entry))}</h3>
      <p className={styles.says}>{traySays(entry.refusal?.says ?? null)}</p>
      {trouble}
      <div className={styles.form}>
        <Button bench onClick={() => settle(browserOutbox().resend(entry.id))}>
          {trayWords.again}
        </Button>
        <Field
          bench
          label={trayWords.because}
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <Button
          bench
          disabled={reason.trim() === ''}
          onClick={() => settle(browserOutbox().setAside(entry.id, reason))}
        >
          {trayWords.away}
        </Button>
      </div>
    </section>
  );
}

function AwayEntry({ entry, onSent }: { entry: Entry; onSent: () => void }) {
  const { view } = useJob();
  const { settle, trouble } = useSettle();
  return (
    <div className={styles.section}>
      <h4>{trayTitle(factsOf(view, entry))}</h4>
      <p className={styles.says}>{awaySays(entry.aside!)}</p>
      {trouble}
      <div className={styles.form}>
        <Button bench onClick={() => settle(browserOutbox().resend(entry.id), onSent)}>
          {trayWords.after}
        </Button>
      </div>
    </div>
  );
}

/** What an entry is of, as far as the job that is open knows it. */
function factsOf({ sheet }: JobView, entry: Entry): TrayFacts {
  const markOf = (pieceId?: string) => sheet.pieces.find(({ id }) => id === pieceId)?.mark ?? null;
  const featureOf = (featureId?: string) =>
    sheet.features.find(({ id }) => id === featureId) ?? null;
  const eventFacts = (event: Pick<RunEvent, 'runId' | 'afterOrdinal' | 'kind'>): TrayFacts => {
    const feature = featureOf(sheet.runs.find(({ id }) => id === event.runId)?.featureId);
    const turn = Math.max(event.afterOrdinal, 1);
    const piece = sheet.pieces.find(
      ({ partId, ordinal }) => partId === feature?.partId && ordinal === turn,
    );
    return {
      what: { event: event.kind, isFirst: event.afterOrdinal === 0 },
      mark: piece?.mark ?? null,
      feature: feature?.name ?? null,
      place: '',
    };
  };
  const cutFacts = ({ spring, pieceId, featureId }: CutAt): TrayFacts => ({
    what: { spring },
    mark: markOf(pieceId),
    feature: featureOf(featureId)?.name ?? null,
    place: '',
  });
  switch (entry.kind) {
    case 'event':
      return eventFacts(entry.row);
    case 'cut':
      return cutFacts(entry.row);
    case 'strike': {
      const { thing, thingId, struck } = entry.row;
      const cut = sheet.cuts.find(({ id }) => id === thingId);
      const event = sheet.runEvents.find(({ id }) => id === thingId);
      const facts = cut ? cutFacts(cut) : event ? eventFacts(event) : nowhere(thing);
      return { ...facts, strike: struck ? 'out' : 'back' };
    }
    default: {
      const at =
        entry.kind === 'reading'
          ? entry.row
          : sheet.readings.find(({ id }) => id === entry.row.readingId);
      const feature = featureOf(at?.featureId);
      return {
        what:
          entry.kind === 'reading'
            ? { text: entry.row.text, unit: entry.row.unit }
            : { correction: entry.row.kind },
        mark: markOf(at?.pieceId),
        feature: feature?.name ?? null,
        place: at === undefined || feature === null ? '' : placeWords(at, feature),
      };
    }
  }
}

/** Of a cut or an event that the job open here does not know. */
function nowhere(thing: 'cut' | 'runEvent'): TrayFacts {
  return { what: { thing }, mark: null, feature: null, place: '' };
}

type CutAt = Pick<Cut, 'spring' | 'pieceId' | 'featureId'>;
