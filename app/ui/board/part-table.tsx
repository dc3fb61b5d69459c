'use client';

import Link from 'next/link';
import { useState, type CSSProperties } from 'react';
import type { PartView } from '@/lib/rules/job-view';
import { useJob } from '../job/job-provider';
import { FeatureHead } from './feature-head';
import { PieceRow } from './piece-row';
import styles from './board.module.css';

type Props = {
  part: PartView;
  open: boolean;
  /** What is said of it while it is folded. */
  summary: string;
  onTurn: () => void;
};

/** One part on the board: its pieces down, its features across; or one line while it is folded. */
export function PartTable({ part: { part, pieces, features }, open, summary, onTurn }: Props) {
  const { view } = useJob();
  const [picked, setPicked] = useState(0);
  const tally = view.progress.byPart.get(part.id) ?? { made: 0, of: 0 };
  const count = `${tally.made} of ${tally.of}`;
  const longestMark = Math.max(0, ...pieces.map(({ mark }) => mark.length));
  const name = (
    <button
      type="button"
      className={`${styles.turn} on-paper`}
      aria-expanded={open}
      onClick={onTurn}
    >
      {part.name}
    </button>
  );
  if (!open) {
    return (
      <section className={styles.folded} aria-label={part.name}>
        <h2 className={styles.partName}>{name}</h2>
        <span>{count}</span>
        <span className={styles.summary}>{summary}</span>
      </section>
    );
  }
  return (
    <section className={styles.part} aria-label={part.name}>
      {features.length > 1 && (
        <div className={styles.pick} role="group" aria-label={`Feature of ${part.name} shown`}>
          {features.map((feature, index) => (
            <button
              key={feature.id}
              type="button"
              aria-pressed={index === picked}
              onClick={() => setPicked(index)}
            >
              {feature.balloon || index + 1}
              <span className="unseen"> {feature.name}</span>
            </button>
          ))}
        </div>
      )}
      <div className={styles.scroll}>
        <table
          className={styles.pieces}
          data-many={features.length > 3}
          style={{ '--features': features.length, '--mark': longestMark } as CSSProperties}
        >
          <caption className="unseen">
            {part.name}, {count} made
          </caption>
          <colgroup>
            <col className={styles.markColumn} />
            <col className={styles.mateColumn} />
          </colgroup>
          <thead>
            <tr>
              <th scope="col" colSpan={2} className={styles.partHead}>
                <h2 className={styles.partName}>{name}</h2>
                <span className={styles.remark}>
                  {[count, part.material].filter(Boolean).join(', ')}
                </span>
              </th>
              {features.map((feature, index) => (
                <FeatureHead
                  key={feature.id}
                  feature={feature}
                  pieces={pieces}
                  picked={index === picked}
                />
              ))}
            </tr>
          </thead>
          <tbody>
            {pieces.map((piece) => (
              <PieceRow key={piece.id} piece={piece} features={features} picked={picked} />
            ))}
          </tbody>
        </table>
      </div>
      {features.length === 0 && (
        <p className={styles.empty}>
          No features yet. <Link href={`/jobs/${part.jobId}/edit`}>Add the first one</Link> from the
          drawing.
        </p>
      )}
    </section>
  );
}
