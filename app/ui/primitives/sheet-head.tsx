'use client';

import Link from 'next/link';
import { useEffect, useRef } from 'react';
import type { IndexEntry } from './job-index';
import styles from './sheet-head.module.css';

type Props = {
  job?: { name: string; href?: string };
  index: readonly IndexEntry[];
  /** Label of the sheet that is open. */
  current: string;
  /** On a phone the bench keeps its whole height: no bottom row. */
  bench?: boolean;
};

/** Name, job and the numbered index of sheets. Alt and a digit go to a sheet; on a phone the index is the bottom row. */
export function SheetHead({ job, index, current, bench = false }: Props) {
  const nav = useRef<HTMLElement>(null);
  useAltDigits(nav);
  return (
    <header className={styles.head}>
      <Link href="/" className={styles.shop}>
        Fitwright
      </Link>
      {job === undefined ? null : (
        <span className={styles.job}>
          {job.href === undefined ? job.name : <Link href={job.href}>{job.name}</Link>}
        </span>
      )}
      <nav ref={nav} className={`${styles.index} ${bench ? styles.bench : ''}`} aria-label="Sheets">
        {index.map(({ number, label, href }) => (
          <Link
            key={label}
            href={href}
            className={styles.entry}
            {...(number === undefined
              ? {}
              : { 'data-number': number, 'aria-keyshortcuts': `Alt+${number}` })}
            {...(label === current ? { 'aria-current': 'page' as const } : {})}
          >
            {number === undefined ? null : (
              <span className={styles.number} aria-hidden>
                {number}
              </span>
            )}
            {label}
          </Link>
        ))}
      </nav>
    </header>
  );
}

/** A digit alone belongs to the entry; with Alt it goes to the sheet of that number. */
function useAltDigits(nav: React.RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      if (!event.altKey || event.ctrlKey || event.metaKey) return;
      const digit = /^(?:Digit|Numpad)(\d)$/.exec(event.code)?.[1];
      const link = nav.current?.querySelector<HTMLAnchorElement>(`[data-number="${digit}"]`);
      if (link === null || link === undefined) return;
      event.preventDefault();
      link.click();
    };
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  }, [nav]);
}
