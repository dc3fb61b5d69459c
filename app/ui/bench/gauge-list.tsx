'use client';

import Link from 'next/link';
import { entryGauge } from '@/lib/rules/entry-gauge';
import { gaugeFacts } from '@/lib/text/bench-gauge';
import styles from './list.module.css';
import type { Bench } from './use-bench';

type Props = { bench: Bench; onChosen?: () => void };

/** Every gauge of the shop, those that can measure this feature first; one tap chooses. */
export function GaugeList({ bench, onChosen }: Props) {
  const { view, feature, gauge, chosen, chooseGauge } = bench;
  const offers = entryGauge(view.sheet.gauges, feature);
  if (offers.length === 0) {
    return (
      <p className={styles.empty}>
        No gauge in the register. <Link href="/gauges">Add the one you hold</Link>, then measure.
      </p>
    );
  }
  return (
    <ul className={styles.list} aria-label="Gauges">
      {offers.map(({ gauge: offer, covers }) => (
        <li key={offer.id}>
          <button
            type="button"
            className={styles.row}
            aria-pressed={offer.id === gauge?.id}
            onClick={() => {
              chooseGauge(offer.id);
              onChosen?.();
            }}
          >
            <span className={styles.name}>{offer.name}</span>
            <span className={styles.note}>
              {gaugeFacts(offer, chosen)}
              {covers ? '' : ', not this size'}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
