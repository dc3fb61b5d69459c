'use client';

import { useState } from 'react';
import { FitTable } from '../fit-rules/fit-rules';
import type { FitRulesData } from '../fit-rules/fit-rules-data';
import styles from './fits.module.css';

/** What the two rules show, in a table; made when it is opened, as it may have hundreds of rows. */
export function TwinTable({ data }: { data: FitRulesData }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details className={styles.twin} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The same in a table</summary>
      {isOpen && <FitTable data={data} />}
    </details>
  );
}
