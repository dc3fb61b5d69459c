import type { CSSProperties } from 'react';
import styles from './progress-rule.module.css';

type Props = {
  made: number;
  of: number;
  /** What is counted: "pieces". */
  things?: string;
};

/** A rule with one tick a piece, longer at 5 and 10; the blue line stands at the pieces made. */
export function ProgressRule({ made, of, things = 'pieces' }: Props) {
  const words = `${made} of ${of} ${things}`;
  if (of < 1) return <div className={styles.bare} />;
  const share = (100 * Math.min(made, of)) / of;
  const step = of > mostTicks ? 10 : 1;
  const ticks = Array.from({ length: Math.floor(of / step) + 1 }, (_, index) => index * step);
  return (
    <div className={styles.rule}>
      <svg className={styles.ticks} width="100%" height={22} role="img" aria-label={words}>
        <line className={styles.base} x1="0" y1={1} x2="100%" y2={1} />
        {ticks.map((n) => (
          <line
            key={n}
            className={n % 10 === 0 || n % 5 === 0 ? styles.long : styles.tick}
            x1={`${(100 * n) / of}%`}
            y1={1}
            x2={`${(100 * n) / of}%`}
            y2={n % 10 === 0 ? 14 : n % 5 === 0 ? 10 : 6}
          />
        ))}
        <line className={styles.made} x1={`${share}%`} y1={1} x2={`${share}%`} y2={19} />
      </svg>
      <span
        className={styles.words}
        data-before-on-phone={share > 60}
        data-before={share > 85}
        style={{ '--share': `${share}%` } as CSSProperties}
        aria-hidden
      >
        {words}
      </span>
    </div>
  );
}

/** More ticks than this would run into one another on a phone. */
const mostTicks = 200;
