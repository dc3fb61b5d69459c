import { verdictWords, type ShownWithStep, type VerdictFacts } from '@/lib/text/verdict';
import { VerdictMark } from './verdict-mark';
import styles from './verdict.module.css';

type Props = ShownWithStep & {
  verdict: VerdictFacts;
  /** Station and direction: "middle, across B". */
  where?: string;
};

/** The mark, its word and where it was measured; the mark 1.4 times its size on a phone, 1.7 times on a tablet. */
export function VerdictLine({ verdict, where, ...shown }: Props) {
  return (
    <p className={styles.line}>
      <VerdictMark state={verdict.state} side={verdict.side ?? null} />
      <span className={styles.word}>{verdictWords(verdict, shown)}</span>
      {where === undefined ? null : <span className={styles.where}>{where}</span>}
    </p>
  );
}
