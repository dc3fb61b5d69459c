import { LinkButton } from '../primitives/link-button';
import { When } from '../primitives/when';
import styles from './jobs.module.css';

/** Where this device stopped, and one button back to it. */
export type Stopped = {
  mark: string;
  part: string;
  feature: string;
  /** The last reading there; null where it is hidden. */
  read: string | null;
  at: string;
  /** What was next there. */
  next: string;
  href: string;
};

export function CarryOn({ stopped }: { stopped: Stopped }) {
  return (
    <section className={styles.carry} aria-label="Carry on">
      <p className={styles.carryMark}>{stopped.mark}</p>
      <div>
        <p className={styles.carryTitle}>
          You stopped at {stopped.mark}, {stopped.part.toLowerCase()}, <When at={stopped.at} />
        </p>
        <p>
          {stopped.feature}
          {stopped.read === null ? '' : ` read ${stopped.read}`}. Next: {stopped.next}
        </p>
      </div>
      <LinkButton kind="main" href={stopped.href}>
        Carry on
      </LinkButton>
    </section>
  );
}
