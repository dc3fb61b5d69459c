'use client';

import { zoneRun } from '@/lib/rules/zone-run';
import { useThings } from '../job/use-things';
import { runSays } from '../runs/run-says';
import { ZoneActs } from '../runs/zone-acts';
import type { Bench } from './use-bench';
import styles from './zone-note.module.css';

type Props = { bench: Bench; /** Gives the entry its place back. */ onDone: () => void };

/** On a run: what the last piece means by zones and what to do; or the offer to run by zones. */
export function ZoneNote({ bench, onDone }: Props) {
  const { view, feature, chosen } = bench;
  const { change, trouble, busy } = useThings();
  const run = view.runs.find((one) => one.feature.id === feature.id);
  const zones = run === undefined ? null : zoneRun(run);
  if (run === undefined || zones === null) return null;
  const turn = async (on: boolean) => {
    await change('run', run.run.id, { version: run.run.version, zones: on });
    onDone();
  };
  if (!run.run.zones) {
    return (
      <p className={styles.offer}>
        <button type="button" disabled={busy} onClick={() => void turn(true)}>
          Run by zones
        </button>
        {trouble}
      </p>
    );
  }
  const words = runSays(run, chosen);
  return (
    <section className={styles.zones} data-decide={words.decide || undefined} aria-label="By zones">
      <p className={styles.says} role={words.decide ? 'alert' : 'status'}>
        <b className={styles.title}>{words.title}</b> {words.says}{' '}
        {zones.state === 'stop' ? null : (
          <button type="button" disabled={busy} onClick={() => void turn(false)}>
            No longer by zones
          </button>
        )}
      </p>
      <ZoneActs run={run} zones={zones} onDone={onDone} />
      {trouble}
    </section>
  );
}
