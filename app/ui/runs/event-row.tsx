'use client';

import { useState } from 'react';
import { dialUnit } from '@/lib/rules/cuts/slide';
import { lastTurn } from '@/lib/rules/last-turn';
import type { RunView } from '@/lib/rules/run-view';
import type { RunEventKind } from '@/lib/schema/run';
import { eventKinds, eventWords } from '@/lib/text/event-words';
import { offsetFigures } from '@/lib/text/offset-words';
import { useJob } from '../job/job-provider';
import { EventForm } from './event-form';
import styles from './events.module.css';
import { useEvent } from './use-event';

type Props = {
  run: RunView;
  /** On the Bench, where the entry wants its place back. */
  bench?: boolean;
  onDone?: () => void;
};

/** What happened after the last piece, in one tap; an offset as advised too, any other asks how far. */
export function EventRow({ run, bench = false, onDone }: Props) {
  const { chosen } = useJob();
  const { note, trouble, busy } = useEvent(run);
  const [asking, setAsking] = useState(false);
  const last = lastTurn(run);
  const lastEvent = run.events.findLast(
    ({ afterOrdinal }) => afterOrdinal === (last?.ordinal ?? 0),
  );
  // By zones, the zones alone say what to move.
  const advised = run.piecesLeft === 0 && !run.run.zones ? run.offset : null;
  const tap = async (kind: RunEventKind) => {
    if (kind === 'offset moved') return setAsking(true);
    if (await note(kind)) onDone?.();
  };
  return (
    <section
      className={`${styles.row} not-on-paper`}
      data-bench={bench || undefined}
      aria-label="Note an event"
    >
      <p className={styles.label}>
        {last === null ? 'Before the first piece' : `After ${last.mark}`}
        {lastEvent === undefined ? '' : `: ${eventWords(lastEvent, chosen).title.toLowerCase()}`}
      </p>
      <div className={styles.kinds}>
        {advised !== null && (
          <button
            type="button"
            className={styles.advised}
            disabled={busy}
            onClick={() =>
              void note('offset moved', {
                offsetPm: advised.onDiameterPm,
                offsetDial: run.run.dial,
              }).then((done) => done && onDone?.())
            }
          >
            Moved {offsetFigures(advised, dialUnit(run.run, chosen.unit), chosen).offset}
          </button>
        )}
        {eventKinds.map((kind) => (
          <button
            key={kind}
            type="button"
            disabled={busy}
            {...(kind === 'offset moved' ? { 'aria-expanded': asking } : {})}
            onClick={() => void tap(kind)}
          >
            {kind === 'other' ? 'Other' : eventWords({ kind, note: '', at: '' }).title}
          </button>
        ))}
      </div>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      {asking && (
        <EventForm
          run={run}
          kind="offset moved"
          onDone={() => {
            setAsking(false);
            onDone?.();
          }}
        />
      )}
    </section>
  );
}
