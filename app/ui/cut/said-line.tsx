import type { Said } from '@/lib/text/said';
import styles from './cut.module.css';

/** A sentence with its figures in the face of what is measured. */
export function SaidLine({ said }: { said: Said }) {
  return said.map((part, index) =>
    typeof part === 'string' ? (
      part
    ) : (
      <b key={index} className={styles.figure}>
        {part.figure}
      </b>
    ),
  );
}
