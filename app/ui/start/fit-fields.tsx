'use client';

import { FitWayFields } from '../fit-ways/fit-way-fields';
import styles from './start.module.css';

type Props = { title: string } & React.ComponentProps<typeof FitWayFields>;

/** How freely one part is to run in the other; left empty, there is no fit yet. */
export function FitFields({ title, ...rest }: Props) {
  return (
    <section className={styles.part} aria-label="The fit">
      <h2>{title}</h2>
      <FitWayFields {...rest} />
    </section>
  );
}
