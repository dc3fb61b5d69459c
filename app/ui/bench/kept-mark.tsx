import type { KeptFacts } from '@/lib/text/bench-head';
import styles from './bench-head.module.css';

/** One stroke: on this device. Two: in the book. A hollow one: on its way. The words stand beside it. */
export function KeptMark({ reached }: { reached: KeptFacts['reached'] }) {
  if (reached === null || reached === 'not kept') return null;
  return (
    <svg className={styles.kept} width={12} height={10} viewBox="0 0 12 10" aria-hidden>
      <rect
        className={reached === 'being kept' ? styles.hollow : styles.stroke}
        x={1.5}
        y={1}
        width={3}
        height={8}
      />
      {reached === 'in the book' ? (
        <rect className={styles.stroke} x={7.5} y={1} width={3} height={8} />
      ) : null}
    </svg>
  );
}
