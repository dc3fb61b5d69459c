'use client';

import type { RunView } from '@/lib/rules/run-view';
import type { ZoneRun } from '@/lib/rules/zone-run';
import { zoneName, zoneSpreadWords } from '@/lib/text/zone-words';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Choice } from '../primitives/choice';
import { Panel } from '../primitives/panel';
import { runSays } from './run-says';
import { ZoneActs } from './zone-acts';
import styles from './zones.module.css';

const shownSteps = 8;

/** A short batch by zones: the switch, what the last piece means, and what to do. */
export function ZonesPanel({ run, zones }: { run: RunView; zones: ZoneRun }) {
  const { chosen } = useJob();
  const { change, trouble, busy } = useThings();
  const isOn = run.run.zones;
  const words = isOn ? runSays(run, chosen) : null;
  const spread = isOn ? zoneSpreadWords(zones.spreadFits, chosen) : '';
  return (
    <Panel title={words?.title ?? 'By zones'} decide={words?.decide ?? false}>
      <div className={styles.panel}>
        {words === null ? (
          <p className="t-sentence">
            For a short batch: five in a row in the middle half of the limits, then two now and
            then.
          </p>
        ) : (
          <>
            <p className="t-sentence">{words.says}</p>
            <ZoneActs run={run} zones={zones} />
            {spread !== '' && <p className="t-sentence">{spread}</p>}
            {zones.steps.length > 0 && (
              <ul className={styles.steps} aria-label="What each piece meant">
                {zones.steps.slice(-shownSteps).map((step) => (
                  <li key={step.piece.id}>
                    <b>{step.piece.mark}</b> {zoneName(step.zone)}
                  </li>
                ))}
              </ul>
            )}
          </>
        )}
        <Choice
          label="Run by zones"
          value={isOn ? 'yes' : 'no'}
          disabled={busy}
          onChange={(value) =>
            void change('run', run.run.id, { version: run.run.version, zones: value === 'yes' })
          }
          options={[
            { value: 'no', label: 'No' },
            { value: 'yes', label: 'Yes' },
          ]}
        />
        {trouble !== null && (
          <p role="alert" className={styles.trouble}>
            {trouble}
          </p>
        )}
      </div>
    </Panel>
  );
}
