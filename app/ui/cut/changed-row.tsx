'use client';

import type { CutChange } from '@/lib/schema/fit';
import { changedWords } from '@/lib/text/cut-log-words';
import styles from './cut.module.css';

type Props = { changed: CutChange | null; onSay: (changed: CutChange | null) => void };

const kinds = ['tool', 'insert', 'speed', 'overhang'] as const;

/** One tap says that something was changed; what it was may follow. The cuts before then teach nothing of the next. */
export function ChangedRow({ changed, onSay }: Props) {
  if (changed === null) {
    return (
      <button type="button" className={styles.textButton} onClick={() => onSay('other')}>
        Something changed
      </button>
    );
  }
  return (
    <div className={styles.changed} role="group" aria-label="What changed">
      <p>{changedWords(changed)}: what it takes is learned afresh. Was it</p>
      {kinds.map((kind) => (
        <button
          key={kind}
          type="button"
          className={styles.chip}
          aria-pressed={changed === kind}
          onClick={() => onSay(kind)}
        >
          the {kind}
        </button>
      ))}
      <button type="button" className={styles.chip} onClick={() => onSay(null)}>
        nothing
      </button>
    </div>
  );
}
