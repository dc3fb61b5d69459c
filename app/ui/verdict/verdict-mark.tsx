import type { VerdictSide, VerdictState } from '@/lib/text/verdict';
import styles from './verdict.module.css';

type Props = {
  state: VerdictState;
  /** The limit it is near, astride or beyond; top is large and stands right. */
  side?: VerdictSide;
  /** 1 at a desk, 1.4 on a phone, 1.7 on a tablet. */
  scale?: number;
  /** Read aloud in dense tables; left out where the word stands beside the mark. */
  word?: string;
};

/** Two posts are the limits, the block is the size: where it stands says which way it is wrong. */
export function VerdictMark({ state, side = null, scale = 1, word }: Props) {
  return (
    <svg
      className={styles.mark}
      width={32 * scale}
      height={16 * scale}
      viewBox="0 0 32 16"
      {...(word === undefined ? { 'aria-hidden': true } : { role: 'img', 'aria-label': word })}
    >
      <g {...(side === 'bottom' ? { transform: 'matrix(-1 0 0 1 32 0)' } : {})}>
        <Inside state={state} />
      </g>
    </svg>
  );
}

/** Drawn for the top side; the bottom side is its mirror. */
function Inside({ state }: { state: VerdictState }) {
  const post = state === 'none' ? styles.greyPost : styles.post;
  const left = <rect className={post} x={7} y={2} width={2} height={12} />;
  const right = <rect className={post} x={23} y={2} width={2} height={12} />;
  switch (state) {
    case 'inside':
      return (
        <>
          {left}
          {right}
          <rect className={styles.block} x={13} y={4} width={6} height={8} />
        </>
      );
    case 'near':
      return (
        <>
          {left}
          <rect className={styles.post} x={22} y={2} width={3} height={12} />
          <rect className={styles.block} x={16} y={4} width={6} height={8} />
        </>
      );
    case 'out':
      return (
        <>
          {left}
          <rect className={styles.warmPost} x={23} y={2} width={2} height={12} />
          <rect className={styles.warmBlock} x={25.75} y={3} width={6} height={10} />
        </>
      );
    case 'unsure':
      return (
        <>
          {left}
          {right}
          <rect className={styles.hollowWarm} x={18} y={4} width={12} height={8} />
        </>
      );
    case 'held':
      return (
        <>
          {left}
          {right}
          <circle className={styles.hollowWarm} cx={16} cy={8} r={5} />
        </>
      );
    case 'struck':
      return (
        <>
          {left}
          {right}
          <rect className={styles.hollow} x={13} y={4} width={6} height={8} />
          <line className={styles.hollow} x1={10.5} y1={8} x2={21.5} y2={8} />
        </>
      );
    case 'to cut':
    case 'to make':
      return (
        <>
          {left}
          {right}
          <path className={styles.vee} d="M12 4.5L16 11.5L20 4.5" />
        </>
      );
    case 'none':
      return (
        <>
          {left}
          {right}
        </>
      );
  }
}
