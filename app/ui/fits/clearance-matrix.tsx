'use client';

import { useState } from 'react';
import { clearanceOf, type FitPiece, type FitView } from '@/lib/rules/fit-view';
import { clearanceSteps, stepWords } from '@/lib/text/fit-words';
import { shownSize } from '@/lib/text/shown-size';
import { verdictWords } from '@/lib/text/verdict';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { VerdictMark } from '../verdict/verdict-mark';
import { PairChoice } from './pair-choice';
import styles from './fits.module.css';

/** Past this many pieces on a side the table is not drawn; the list of pairs says the same. */
const drawnMost = 40;

type Props = { fit: FitView; onAsk: (pieceId: string) => void };

/** The clearance of every measured piece with every partner; the chosen pairs framed. */
export function ClearanceMatrix({ fit, onAsk }: Props) {
  const { view, chosen } = useJob();
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
                  <PieceName piece={external} />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {internals.map((internal) => (
              <tr key={internal.piece.id}>
                <th scope="row">
                  <PieceName piece={internal} />
                </th>
                {externals.map((external) => (
                  <MatrixCell key={external.piece.id} internal={internal} external={external} />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {asked !== null && <PairChoice fit={fit} {...asked} onDone={() => setAsked(null)} />}
    </section>
  );

  function PieceName({ piece: { piece, size, stillToCut } }: { piece: FitPiece }) {
    const isInternal = piece.partId === fit.internalFeature.partId;
    const feature = isInternal ? fit.internalFeature : fit.externalFeature;
    const step = resolutionOf(view, view.cell(piece.id, feature.id), feature);
    return (
      <>
        <b>{piece.mark}</b>{' '}
        <span className={styles.remark}>
          {size === null || stillToCut
            ? isInternal
              ? 'not measured'
              : 'to make'
            : shownSize(size, step, chosen).value}
        </span>
      </>
    );
  }

  function MatrixCell({ internal, external }: { internal: FitPiece; external: FitPiece }) {
    const ids = [internal.piece.id, external.piece.id] as const;
    const toMake = fit.toMake.find(
      (target) => target.partnerId === ids[0] && target.pieceId === ids[1],
    );
    if (toMake !== undefined) {
      return (
        <td className={styles.toMake}>
          <button type="button" onClick={() => onAsk(toMake.pieceId)}>
            aim {clearanceSteps(fit.fit.aimPm, chosen)}
          </button>
        </td>
      );
    }
    const clearance = external.stillToCut ? null : clearanceOf(internal, external, fit.fit);
    if (clearance === null) return <td />;
    const pair = fit.pairs.find(
      (candidate) => candidate.internalPieceId === ids[0] && candidate.externalPieceId === ids[1],
    );
    const figure = clearanceSteps(clearance.clearancePm, chosen);
    const apart = fit.leftOut.has(`${ids[0]} ${ids[1]}`);
    return (
      <td data-state={pair?.state ?? (apart ? 'left out' : clearance.verdict.state)}>
        <button type="button" onClick={() => setAsked({ internal, external })}>
          <span className={apart ? 'struck' : undefined}>{figure}</span>
          {clearance.verdict.state !== 'out' && (
            <VerdictMark
              state={clearance.verdict.state}
              side={clearance.verdict.side}
              word={verdictWords(clearance.verdict, { ...chosen, resolutionPm: null })}
            />
          )}
          <span className="unseen">
            {clearance.verdict.state === 'out' ? 'outside' : ''}
            {pair === undefined ? '' : `, ${pair.state}`}
            {apart ? ', left out' : ''}
          </span>
        </button>
      </td>
    );
  }
}
