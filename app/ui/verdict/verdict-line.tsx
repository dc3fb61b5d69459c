import { verdictWords, type ShownWithStep, type VerdictFacts } from '@/lib/text/verdict';
import { VerdictMark } from './verdict-mark';
import styles from './verdict.module.css';

type Props = ShownWithStep & {
  verdict: VerdictFacts;
  /** Station and direction: "middle, across B". */
  where?: string;
  /** 1.4 on a phone, 1.7 on a tablet. */
  scale?: number;
};

/** The mark, its word and where it was measured. */
export function VerdictLine({ verdict, where, scale = 1.4, ...shown }: Props) {
  return (
    <p className={styles.line}>
      <VerdictMark state={verdict.state} side={verdict.side ?? null} scale={scale} />
      <span className={styles.word}>{verdictWords(verdict, shown)}</span>
      {where === undefined ? null : <span className={styles.where}>{where}</span>}
    </p>
  );
}
