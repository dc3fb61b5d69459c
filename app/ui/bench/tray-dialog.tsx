'use client';

import { useState } from 'react';
import { browserOutbox } from '@/lib/outbox/browser-outbox';
import type { Entry } from '@/lib/outbox/entry';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { BenchDialog } from './bench-dialog';
import styles from './list.module.css';

type Props = { tray: readonly Entry[]; onClose: () => void };

/** What the notebook would not take: each stays here until a person has settled it. */
export function TrayDialog({ tray, onClose }: Props) {
  return (
    <BenchDialog title="The notebook would not take these" onClose={onClose}>
      {tray.length === 0 ? <p className={styles.empty}>Nothing waits here any more.</p> : null}
      {tray.map((entry) => (
        <TrayEntry key={entry.id} entry={entry} />
      ))}
    </BenchDialog>
  );
}

function TrayEntry({ entry }: { entry: Entry }) {
  const [reason, setReason] = useState('');
  return (
    <section className={styles.section}>
      <h3>{whatOf(entry)}</h3>
      <p className={styles.says}>
        {entry.refusal?.says ?? 'No reason was given'}. It is kept on this device.
      </p>
      <div className={styles.form}>
        <Button bench onClick={() => void browserOutbox().resend(entry.id)}>
          Send it once more
        </Button>
        <Field
          bench
          label="Put it away, because"
          value={reason}
          onChange={(event) => setReason(event.target.value)}
        />
        <Button
          bench
          disabled={reason.trim() === ''}
          onClick={() => void browserOutbox().setAside(entry.id, reason)}
        >
          Put it away
        </Button>
      </div>
    </section>
  );
}

function whatOf(entry: Entry): string {
  if (entry.kind === 'cut') return entry.row.spring ? 'Spring pass' : 'Cut';
  return entry.kind === 'reading' ? `Reading ${entry.row.text}` : `Correction: ${entry.row.kind}`;
}
