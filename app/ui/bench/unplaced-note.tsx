'use client';

import { useState } from 'react';
import { unplacedLabel, unplacedWords } from '@/lib/text/bench-unplaced';
import styles from './bench-notes.module.css';
import type { EntryState } from './use-entry';

type Props = { unplaced: EntryState['unplaced']; blind: boolean };

/** What was typed and is no reading yet: one press on it types it again, where it belongs. */
export function UnplacedNote({ unplaced, blind }: Props) {
  const [isSure, setSure] = useState(false);
  const { list, place, throwAway } = unplaced;
  if (list.length === 0) return null;
  return (
    <div className={styles.notes} role="group" aria-label="Not placed yet">
      <p className={styles.note}>
        {unplacedWords(list)}
        {list.map((one, index) => (
          <button key={one.id} type="button" className={styles.act} onClick={() => place(one)}>
            {unplacedLabel(one.text, index, blind)}
          </button>
        ))}
        <button
          type="button"
          className={styles.act}
          onBlur={() => setSure(false)}
          onClick={() => {
            if (isSure) throwAway();
            setSure(!isSure);
          }}
        >
          {isSure ? 'Yes, throw away' : 'Throw away'}
        </button>
      </p>
    </div>
  );
}
