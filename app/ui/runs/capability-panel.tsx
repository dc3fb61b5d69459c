'use client';

import { useMemo } from 'react';
import { capabilityView } from '@/lib/rules/capability-view';
import type { RunView } from '@/lib/rules/run-view';
import { capabilityWords } from '@/lib/text/capability-words';
import { turnWord } from '@/lib/text/turn-word';
import { useJob } from '../job/job-provider';
import { Panel } from '../primitives/panel';
import styles from './runs.module.css';

/** The capability of the run with its limits, or why there is none and what would make one. */
export function CapabilityPanel({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const view = useMemo(() => capabilityView(run), [run]);
  const { lowerPm, upperPm } = run.limits;
  const tolerancePm = lowerPm === null || upperPm === null ? null : upperPm - lowerPm;
  const words = capabilityWords(
    view.kind === 'none' ? { ...view, tolerancePm } : view,
    turnWord(run.features),
    chosen,
  );
  return (
    <Panel title="Capability" level={3}>
      {words.rows.length > 0 && (
        <dl className={styles.facts}>
          {words.rows.map(({ label, figure, range }) => (
            <div key={label} className={styles.fact}>
              <dt>{label}</dt>
              <dd>
                <b>{figure}</b> ({range})
              </dd>
            </div>
          ))}
        </dl>
      )}
      {words.says.map((says) => (
        <p key={says} className="t-sentence">
          {says}
        </p>
      ))}
    </Panel>
  );
}
