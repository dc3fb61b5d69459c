import type { Departure } from '@/lib/schema/run';
import { Panel } from '../primitives/panel';
import styles from './board.module.css';

/** A decision to make something other than drawn: what, instead of what, why, and what it touches. */
export function DeparturePanel({ departure }: { departure: Departure }) {
  const { number, made, drawn, why, touches } = departure;
  return (
    <Panel title={`Departure ${number}`}>
      <p className={styles.says}>
        {made}, drawn {drawn}
        {why !== '' && `: ${why}`}.{touches !== '' && ` Touches ${touches}.`}
      </p>
    </Panel>
  );
}
