'use client';

import { clearanceOf, type FitPiece, type FitView } from '@/lib/rules/fit-view';
import { cellKey } from '@/lib/rules/cells';
import { clearanceFigure } from '@/lib/text/fit-words';
import { uuidv7 } from '@/lib/outbox/ids';
import { verdictWords } from '@/lib/text/verdict';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './fits.module.css';

type Props = { fit: FitView; internal: FitPiece; external: FitPiece; onDone: () => void };

/** What can be decided about one pair of the table: keep it together, keep it apart, or neither. */
export function PairChoice({ fit, internal, external, onDone }: Props) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const clearance = clearanceOf(internal, external, fit.fit);
  if (clearance === null) return null;
  const pair = view.sheet.pairs.find(
    (candidate) =>
      candidate.fitId === fit.fit.id &&
      candidate.internalPieceId === internal.piece.id &&
      candidate.externalPieceId === external.piece.id &&
      candidate.struckAt === null,
  );
  const isFinal = pair?.state === 'final';
  const apart = fit.leftOut.has(cellKey(internal.piece.id, external.piece.id));
  const words = verdictWords(clearance.verdict, { ...chosen, resolutionPm: null });
  return (
    <div className={styles.choice} role="group" aria-label="This pair">
      <p className="t-sentence">
        <b className={styles.figureBold}>{external.piece.mark}</b> in{' '}
        <b className={styles.figureBold}>{internal.piece.mark}</b>:{' '}
        {clearanceFigure(clearance.clearancePm, chosen)} clear. {words}.
        {isFinal && ' This pair is final; undo it in the list below before you part it.'}
      </p>
      <div className={styles.buttons}>
        {!isFinal && pair?.state !== 'locked' && (
          <Button disabled={busy} onClick={() => settle('locked')}>
            Keep together
          </Button>
        )}
        {!isFinal && !apart && (
          <Button disabled={busy} onClick={() => settle('left out')}>
            Keep apart
          </Button>
        )}
        {!isFinal && (pair?.state === 'locked' || apart) && (
          <Button disabled={busy} onClick={() => settle('undone')}>
            Leave it to the pairing
          </Button>
        )}
        <Button onClick={onDone}>Close</Button>
      </div>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </div>
  );

  async function settle(state: 'locked' | 'left out' | 'undone') {
    const decision = { state, decidedAt: new Date().toISOString(), personId: chosen.personId };
    const done =
      pair === undefined
        ? await make('pair', {
            id: uuidv7(),
            jobId: fit.fit.jobId,
            fitId: fit.fit.id,
            internalPieceId: internal.piece.id,
            externalPieceId: external.piece.id,
            mark: '',
            clearancePm: null,
            uncertaintyPm: null,
            ...decision,
          })
        : await change('pair', pair.id, { version: pair.version, ...decision });
    if (done) onDone();
  }
}
