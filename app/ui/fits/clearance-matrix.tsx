'use client';

import { useState } from 'react';
import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import { stepWords } from '@/lib/text/fit-words';
import { useJob } from '../job/job-provider';
import { VerdictMark } from '../verdict/verdict-mark';
import { MatrixCell } from './matrix-cell';
import { PairChoice } from './pair-choice';
import { PieceName } from './piece-name';
import styles from './fits.module.css';

/** Past this many pieces on a side the table is not drawn; the list of pairs says the same. */
const drawnMost = 40;

type Props = { fit: FitView; onAsk: (pieceId: string) => void };

/** The clearance of every measured piece with every partner; the chosen pairs framed. */
export function ClearanceMatrix({ fit, onAsk }: Props) {
  const { chosen } = useJob();
  const [asked, setAsked] = useState<{ internal: FitPiece; external: FitPiece } | null>(null);
  const { internals, externals } = fit;
  if (internals.length > drawnMost || externals.length > drawnMost) {
    return (
      <p className={styles.sentence}>
        {internals.length} by {externals.length} pairs: too many to draw as a table. The pairs
        chosen are listed below.
      </p>
    );
  }
  return (
    <section aria-label="Clearance of every pair" className={styles.matrixPanel}>
      <div className={styles.matrixHead}>
        <h2 className={styles.small}>Clearance of every pair</h2>
        <span className={styles.remark}>{stepWords(chosen)}</span>
        <span className={styles.legend}>
          <VerdictMark state="inside" side={null} /> inside
          <VerdictMark state="unsure" side="bottom" /> unsure
          <span>figure alone: out</span>
          <span className={styles.chosenKey} /> chosen
        </span>
      </div>
      <div className={styles.scroll}>
        <table className={styles.matrix}>
          <caption className="unseen">
            Clearance of every pair, {stepWords(chosen)}; interference has a minus
          </caption>
          <thead>
            <tr>
              <td />
              {externals.map((external) => (
                <th scope="col" key={external.piece.id}>
                  <PieceName fit={fit} piece={external} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {internals.map((internal) => (
              <tr key={internal.piece.id}>
                <th scope="row">
                  <PieceName fit={fit} piece={internal} />
                </th>
                {externals.map((external) => (
                  <MatrixCell
                    key={external.piece.id}
                    fit={fit}
                    internal={internal}
                    external={external}
                    onAsk={onAsk}
                    onChoose={() => setAsked({ internal, external })}
                  />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {asked !== null && <PairChoice fit={fit} {...asked} onDone={() => setAsked(null)} />}
    </section>
  );
}
