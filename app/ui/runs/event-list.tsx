'use client';

import { useState } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import type { RunEvent } from '@/lib/schema/run';
import { eventToSend, eventWords } from '@/lib/text/event-words';
import { useJob } from '../job/job-provider';
import { useStrike } from '../job/use-strike';
import { EventForm } from './event-form';
import styles from './events.module.css';

/** Every event of the run, to be put right or struck out; what is struck stays, and can be put back. */
export function EventList({ run }: { run: RunView }) {
  const { view, pending } = useJob();
  const { strike, trouble, busy } = useStrike('runEvent');
  const [open, setOpen] = useState<string | null>(null);
  const events = view.sheet.runEvents
    .filter(({ runId }) => runId === run.run.id)
    .sort((a, b) => a.afterOrdinal - b.afterOrdinal || (a.at < b.at ? -1 : 1));
  if (events.length === 0) return null;
  return (
    <section className={styles.events} aria-label="Events">
      <h2 className={styles.title}>Events</h2>
      <ul>
        {events.map((event) => (
          <li key={event.id}>
            <EventLine run={run} event={event} />
            <span className={styles.acts}>
              {pending.has(event.id) && <span className={styles.unsent}>{eventToSend}</span>}
              {event.struckAt === null && (
                <button
                  type="button"
                  disabled={pending.has(event.id)}
                  aria-expanded={open === event.id}
                  onClick={() => setOpen(open === event.id ? null : event.id)}
                >
                  Put right
                </button>
              )}
              <button type="button" disabled={busy} onClick={() => void strike(event)}>
                {event.struckAt === null ? 'Strike out' : 'Put back'}
              </button>
            </span>
            {open === event.id && event.struckAt === null && (
              <EventForm key={event.version} run={run} event={event} onDone={() => setOpen(null)} />
            )}
          </li>
        ))}
      </ul>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </section>
  );
}

function EventLine({ run, event }: { run: RunView; event: RunEvent }) {
  const { chosen } = useJob();
  const { title, note } = eventWords(event, chosen);
  const after = run.pieces.find(({ ordinal }) => ordinal === event.afterOrdinal)?.mark;
  return (
    <span className={event.struckAt === null ? '' : 'struck'}>
      <b>{title}</b> {after === undefined ? 'before the first piece' : `after ${after}`}
      {note === '' ? '' : `, ${note}`}
    </span>
  );
}
