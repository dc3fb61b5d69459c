'use client';

import { memo } from 'react';
import { featureLine, keptWords, takenWords, type KeptFacts } from '@/lib/text/bench-head';
import { fitLimitsWords } from '@/lib/text/fit-words';
import styles from './bench-head.module.css';
import { KeptMark } from './kept-mark';
import type { Bench } from './use-bench';

type Props = { bench: Bench; kept: KeptFacts; person: string | null; onChoose: () => void };

/** Which piece and feature are on the bench, how far they are, and whether what was read is safe. */
export const BenchHead = memo(function BenchHead({ bench, kept, person, onChoose }: Props) {
  const { piece, part, feature, cell, partner, plan, gauge, chosen } = bench;
  const line = featureLine({
    name: feature.name,
    // A drawn size is a size to hope for.
    asDrawn: bench.blind === null ? feature.asDrawn : '',
    partner:
      cell.limitsFrom === 'partner' && partner !== null
        ? { mark: partner.piece.mark, made: partner.target === null }
        : null,
  });
  const words = keptWords(kept);
  const open =
    bench.blind === null &&
    cell.limitsFrom === 'open' &&
    partner !== null &&
    partner.side === 'external';
  return (
    <header className={styles.head}>
      <button type="button" className={styles.choose} onClick={onChoose} aria-haspopup="dialog">
        <span className={styles.mark}>{piece.mark}</span>
        <span className={styles.names}>
          <span className={styles.part}>{part.name}</span>
          <span className={styles.feature}>
            {open
              ? `${feature.name.toLowerCase()}, ${fitLimitsWords(partner.feature.name, partner.fit.fit, chosen)}`
              : line}
          </span>
        </span>
        <span className="unseen">. Choose another piece, feature or gauge</span>
      </button>
      <dl className={styles.block}>
        <div className={styles.wide}>
          <dt>Gauge</dt>
          <dd>{gauge?.name ?? 'none yet'}</dd>
        </div>
        {person === null ? null : (
          <div className={styles.wide}>
            <dt>By</dt>
            <dd>{person}</dd>
          </div>
        )}
        <div>
          <dt className={styles.wide}>Taken</dt>
          <dd>{takenWords(plan.taken, plan.of)}</dd>
        </div>
        {words === '' ? null : (
          <div>
            <dt className={styles.wide}>Kept</dt>
            <dd className={kept.reached === 'not kept' ? styles.loud : undefined}>
              <KeptMark reached={kept.reached} />
              <output>{words}</output>
            </dd>
          </div>
        )}
      </dl>
    </header>
  );
});
