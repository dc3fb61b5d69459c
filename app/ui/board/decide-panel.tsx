'use client';

import { countWord } from '@/lib/text/drift-words';
import { decisionWords } from '../job/decision-words';
import { useJob } from '../job/job-provider';
import { Panel } from '../primitives/panel';
import styles from './board.module.css';

/** What only a person can settle, each with its mark first. Not there when nothing waits. */
export function DecidePanel() {
  const { view, chosen } = useJob();
  const decisions = decisionWords(view, chosen);
  if (decisions.length === 0) return null;
  const count = countWord(decisions.length);
  const title =
    decisions.length === 1
      ? 'One thing to decide'
      : `${count.charAt(0).toUpperCase()}${count.slice(1)} things to decide`;
  return (
    <Panel title={title} decide>
      {decisions.map(({ key, mark, says }) => (
        <p key={key} className={styles.says}>
          <b className={styles.markInText}>{mark}</b> {says}
        </p>
      ))}
    </Panel>
  );
}
