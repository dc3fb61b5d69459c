import Link from 'next/link';
import { ProgressStrip } from './progress-strip';
import type { JobLine } from './job-line';
import { When } from '../primitives/when';
import styles from './jobs.module.css';

/** The register: every job, what of it is made, what waits for a decision, what is next. */
export function JobsRegister({ jobs }: { jobs: readonly JobLine[] }) {
  return (
    <table className={styles.register}>
      <caption className="unseen">Jobs, newest first</caption>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Job</th>
          <th scope="col">Pieces made</th>
          <th scope="col">Pairs</th>
          <th scope="col">To decide</th>
          <th scope="col">Next</th>
        </tr>
      </thead>
      <tbody>
        {jobs.map((job) => (
          <tr key={job.id}>
            <td className={styles.number}>{String(job.number).padStart(3, '0')}</td>
            <th scope="row">
              <Link href={`/jobs/${job.id}/board`} className={styles.name}>
                {job.name}
              </Link>
              <span className={styles.remark}>{job.remark}</span>
            </th>
            <td className={styles.made}>
              <ProgressStrip made={job.made} of={job.of} />
              <span>
                <b>{job.made}</b> of {job.of}
              </span>
            </td>
            <td data-label="Pairs">
              {job.pairs === null ? '' : `${job.pairs.made} of ${job.pairs.of}`}
            </td>
            <td data-label="To decide">
              {job.decisions.length === 0 ? (
                <span className={styles.quiet}>nothing</span>
              ) : (
                <span className={styles.decide}>
                  <b>{job.decisions.length}</b>
                  <span>{job.decisions[0]}</span>
                </span>
              )}
            </td>
            <td data-label="Next">
              {job.next}
              <span className={styles.remark}>
                <When at={job.lastAt} />
              </span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
