import { When } from '../primitives/when';
import type { ShelfLine } from '@/lib/shelf/shelf';
import styles from './here.module.css';

/** The jobs of this device. Plain links: without the notebook each page is opened anew. */
export function JobsOnDevice({ lines }: { lines: readonly ShelfLine[] }) {
  return (
    <ul className={styles.jobs}>
      {lines.map(({ jobId, name, number, keptAtMs }) => (
        <li key={jobId}>
          <span className={styles.number}>{String(number).padStart(3, '0')}</span>
          <span>
            <a href={`/jobs/${jobId}/board`}>{name}</a>
            <span className={styles.remark}>
              as it stood <When at={new Date(keptAtMs).toISOString()} />
            </span>
          </span>
          <a className={styles.bench} href={`/jobs/${jobId}/bench`}>
            Bench
          </a>
        </li>
      ))}
    </ul>
  );
}
