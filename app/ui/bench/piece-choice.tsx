'use client';

import { useState } from 'react';
import { entryNext } from '@/lib/rules/entry-next';
import { emsOf } from '../primitives/ems-of';
import styles from './list.module.css';
import type { Bench } from './use-bench';

type Props = { bench: Bench; onGo: (pieceId: string, featureId: string) => void };

/** The pieces and features of the part on the bench, and the other parts: one tap each. */
export function PieceChoice({ bench, onGo }: Props) {
  const { view, piece, feature, part: here } = bench;
  const [partId, setPartId] = useState(here.id);
  const part = view.parts.find((one) => one.part.id === partId) ?? view.parts[0]!;
  const others = view.parts.filter(
    (one) => one.part.id !== part.part.id && one.features.length > 0,
  );
  const ems = Math.max(0, ...part.pieces.map(({ mark }) => emsOf(mark)));
  const shown = part.features.find(({ id }) => id === feature.id) ?? part.features[0];
  return (
    <>
      <section className={styles.section}>
        <h3>{part.part.name}</h3>
        <ul
          className={styles.marks}
          style={{ '--ems': ems } as React.CSSProperties}
          aria-label="Pieces"
        >
          {part.pieces.map((one) => (
            <li key={one.id}>
              <button
                type="button"
                className={styles.mark}
                aria-pressed={one.id === piece.id}
                data-done={shown !== undefined && isTaken(bench, one.id, shown.id)}
                onClick={() => shown !== undefined && onGo(one.id, shown.id)}
              >
                {one.mark}
              </button>
            </li>
          ))}
        </ul>
        <p className={styles.says}>Light: every place of it has a reading.</p>
      </section>
      {partId === here.id ? (
        <section className={styles.section}>
          <h3>Feature</h3>
          <ul className={styles.list} aria-label="Features">
            {part.features.map((one) => (
              <li key={one.id}>
                <button
                  type="button"
                  className={styles.row}
                  aria-pressed={one.id === feature.id}
                  onClick={() => onGo(piece.id, one.id)}
                >
                  <span className={styles.name}>
                    {one.balloon} {one.name}
                  </span>
                  <span className={styles.note}>{one.asDrawn}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      {others.length === 0 ? null : (
        <section className={styles.section}>
          <h3>Another part</h3>
          <ul className={styles.list} aria-label="Parts">
            {others.map((one) => (
              <li key={one.part.id}>
                <button type="button" className={styles.row} onClick={() => setPartId(one.part.id)}>
                  <span className={styles.name}>{one.part.name}</span>
                  <span className={styles.note}>{one.pieces.length} pieces</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function isTaken({ view }: Bench, pieceId: string, featureId: string): boolean {
  const feature = view.sheet.features.find(({ id }) => id === featureId);
  if (feature === undefined) return false;
  return entryNext(feature, view.cell(pieceId, featureId).readings).next === null;
}
