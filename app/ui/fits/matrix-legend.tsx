import { VerdictMark } from '../verdict/verdict-mark';
import styles from './matrix.module.css';

/** What the marks of the table mean. */
export function MatrixLegend() {
  return (
    <span className={styles.legend}>
      <span>
        <VerdictMark state="inside" side={null} /> inside
      </span>
      <span>
        <VerdictMark state="near" side="bottom" /> near
      </span>
      <span>
        <VerdictMark state="unsure" side="bottom" /> unsure
      </span>
      <span>figure alone: outside</span>
      <span>
        <i className={styles.chosenKey} /> chosen
      </span>
      <span>
        <i className={styles.lockedKey} /> locked or final
      </span>
    </span>
  );
}
