'use client';

import { useCallback, useEffect, useState } from 'react';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import type { Entry } from '@/lib/outbox/entry';
import type { JobView } from '@/lib/rules/job-view';
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
  if (entry.kind === 'event') {
    const { row } = entry;
    const feature = featureOf(sheet.runs.find(({ id }) => id === row.runId)?.featureId);
    const turn = Math.max(row.afterOrdinal, 1);
    const piece = sheet.pieces.find(
      ({ partId, ordinal }) => partId === feature?.partId && ordinal === turn,
    );
    return {
      what: { event: row.kind, isFirst: row.afterOrdinal === 0 },
      mark: piece?.mark ?? null,
      feature: feature?.name ?? null,
      place: '',
    };
  }
  const at =
    entry.kind === 'correction'
      ? sheet.readings.find(({ id }) => id === entry.row.readingId)
      : entry.row;
  const feature = featureOf(at?.featureId);
  return {
    what:
      entry.kind === 'reading'
        ? { text: entry.row.text, unit: entry.row.unit }
        : entry.kind === 'correction'
          ? { correction: entry.row.kind }
          : { spring: entry.row.spring },
    mark: markOf(at?.pieceId),
    feature: feature?.name ?? null,
    place:
      at === undefined || feature === null || !('station' in at) ? '' : placeWords(at, feature),
  };
}
