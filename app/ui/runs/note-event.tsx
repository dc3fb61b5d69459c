'use client';

import { useState } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import type { RunEventKind } from '@/lib/schema/run';
import { uuidv7 } from '@/lib/outbox/ids';
import { parseSigned } from '@/lib/rules/parse-signed';
import { eventKinds, eventWords } from '@/lib/text/event-words';
import { lengthWords } from '@/lib/text/length-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { Panel } from '../primitives/panel';
import styles from './runs.module.css';

type Props = { run: RunView; onDone: () => void };

/** Notes what happened after the last piece: one tap for the kind, a remark if there is one. */
export function NoteEvent({ run, onDone }: Props) {
  const { chosen } = useJob();
  const { make, trouble, busy } = useThings();
  const [note, setNote] = useState('');
  const [offset, setOffset] = useState('');
  const [error, setError] = useState<string>();
  const last = run.points.at(-1);
  return (
    <Panel title="What happened?">
      <p className="t-sentence">
        {last === undefined ? 'Before the first piece.' : `After ${last.mark}.`} A new insert, a
        moved offset or a new chucking starts the line afresh.
      </p>
      <Field
        label="Remark"
        value={note}
        maxLength={120}
        onChange={(event) => setNote(event.target.value)}
      />
      <Field
        label="Offset moved by, on diameter"
        hint={`${chosen.unit}; a minus is smaller`}
        value={offset}
        inputMode="decimal"
        onChange={(event) => setOffset(event.target.value)}
        error={error}
      />
      <div className={styles.kinds}>
        {eventKinds.map((kind) => (
          <Button key={kind} disabled={busy} onClick={() => void keep(kind)}>
            {eventWords({ kind, note: '', at: '' }).title}
          </Button>
        ))}
      </div>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
      <Button onClick={onDone}>Nothing after all</Button>
    </Panel>
  );

  async function keep(kind: RunEventKind) {
    const moved = kind === 'offset moved' ? readOffset() : null;
    if (moved === undefined) return;
    const done = await make('runEvent', {
      id: uuidv7(),
      jobId: run.run.jobId,
      runId: run.run.id,
      afterOrdinal: last?.ordinal ?? 0,
      kind,
      note,
      offsetPm: moved,
      offsetDial: moved === null ? null : run.run.dial,
      at: new Date().toISOString(),
    });
    if (done) onDone();
  }

  /** The offset typed, null where none was, undefined where it cannot be read: the field then says why. */
  function readOffset(): number | null | undefined {
    if (offset.trim() === '') return null;
    const read = parseSigned(offset, chosen);
    if (read.kind === 'length') return read.pm;
    setError(lengthWords(read, offset));
    return undefined;
  }
}
