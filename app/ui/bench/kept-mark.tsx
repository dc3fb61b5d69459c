import type { KeptFacts } from '@/lib/text/bench-head';
import styles from './bench-head.module.css';

/** A tally: one stroke, on this device; two, in the book; a broken one, on its way. The words stand beside it. */
export function KeptMark({ reached }: { reached: KeptFacts['reached'] }) {
  if (reached === null || reached === 'not kept') return null;
  return (
    <svg className={styles.kept} width={12} height={10} viewBox="0 0 12 10" aria-hidden>
      <line
        className={styles.stroke}
        x1={2}
        y1={9}
        x2={5}
        y2={1}
        {...(reached === 'being kept' ? { strokeDasharray: '2 1.5' } : {})}
      />
      {reached === 'in the book' ? (
        <line className={styles.stroke} x1={7} y1={9} x2={10} y2={1} />
      ) : null}
    </svg>
  );
}
