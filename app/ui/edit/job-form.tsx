'use client';

import { useState } from 'react';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Choice } from '../primitives/choice';
import { Field, TextField } from '../primitives/field';
import { KeptForm } from './kept-form';

/** Name, drawing and unit of the job, and whether it is finished. */
export function JobForm({ onDone }: { onDone: () => void }) {
  const { view } = useJob();
  const { change, trouble, busy } = useThings();
  const { job } = view.sheet;
  const { version, name, note, drawing, revision, unit, finishedAt } = job;
  const [draft, setDraft] = useState({ name, note, drawing, revision, unit });
  const [finished, setFinished] = useState(finishedAt !== null);
  const edit = (over: Partial<typeof draft>) => setDraft((old) => ({ ...old, ...over }));
  return (
    <KeptForm busy={busy} trouble={trouble} onKeep={() => void keep()}>
      <Field
        label="Job"
        value={draft.name}
        maxLength={120}
        onChange={(event) => edit({ name: event.target.value })}
        error={draft.name.trim() === '' ? 'A job needs a name.' : undefined}
      />
      <Field
        label="Drawing"
        value={draft.drawing}
        maxLength={120}
        onChange={(event) => edit({ drawing: event.target.value })}
      />
      <Field
        label="Revision"
        value={draft.revision}
        maxLength={120}
        onChange={(event) => edit({ revision: event.target.value })}
      />
      <TextField
        label="Remark"
        value={draft.note}
        maxLength={2000}
        rows={2}
        onChange={(event) => edit({ note: event.target.value })}
      />
      <Choice
        label="Typed and shown in"
        value={draft.unit}
        onChange={(value) => edit({ unit: value })}
        options={[
          { value: 'mm', label: 'Millimetres' },
          { value: 'in', label: 'Inches' },
        ]}
      />
      <Choice
        label="The job is"
        value={finished ? 'finished' : 'open'}
        onChange={(value) => setFinished(value === 'finished')}
        options={[
          { value: 'open', label: 'Still being made' },
          { value: 'finished', label: 'Finished' },
        ]}
      />
    </KeptForm>
  );

  async function keep() {
    if (draft.name.trim() === '') return;
    const at = finished ? (finishedAt ?? new Date().toISOString()) : null;
    if (await change('job', job.id, { version, ...draft, finishedAt: at })) onDone();
  }
}
