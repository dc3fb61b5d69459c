'use client';

import { cellKey } from '@/lib/rules/cells';
import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import { madeClearance } from '@/lib/rules/made-clearance';
import { pairRow } from '@/lib/rules/pair-row';
import { targetPair } from '@/lib/rules/target-pair';
import { choosePairWords, undoInListWords } from '@/lib/text/fits-sheet-words';
import { leftOutWords, noClearanceWords, pairWords, toMakeWords } from '@/lib/text/matrix-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { stillToCut } from './matrix-cell';
import { usePairActs } from './use-pair-acts';
import styles from './matrix.module.css';

type Props = {
  fit: FitView;
  /** Of the cell that has the focus; null where it is a head, or nothing was chosen yet. */
  internal: FitPiece | null;
  external: FitPiece | null;
  stepPm: number;
};

/** Under the table: what the chosen pair is and how surely, and what can be decided about it. */
export function MatrixLine({ fit, internal, external, stepPm }: Props) {
  const { chosen } = useJob();
  const acts = usePairActs(fit);
  const only = internal ?? external;
  if (only === null) {
    return <p className={styles.line}>{choosePairWords}</p>;
  }
  const said =
    internal === null || external === null
      ? leftOutWords(only.piece.mark, only.leftOut)
      : wordsOf(internal, external);
  return (
    <div role="group" aria-label="Chosen in the table" className={styles.choice}>
      <p className={styles.line}>{said}</p>
      <div className={styles.buttons}>
        {internal === null || external === null ? (
          <Button
            disabled={acts.busy}
            onClick={() => void acts.leaveOut(only.piece.id, !only.leftOut)}
          >
            {only.leftOut ? `Take ${only.piece.mark} in again` : `Leave ${only.piece.mark} out`}
          </Button>
        ) : (
          <PairButtons fit={fit} internal={internal} external={external} acts={acts} />
        )}
      </div>
      {acts.trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {acts.trouble}
        </p>
      )}
    </div>
  );

  function wordsOf(inner: FitPiece, outer: FitPiece): string {
    const marks = { internal: inner.piece.mark, external: outer.piece.mark };
    const target = [...fit.toMake, ...fit.toBore].find((one) => {
      const { internalPieceId, externalPieceId } = targetPair(one);
      return internalPieceId === inner.piece.id && externalPieceId === outer.piece.id;
    });
    if (target !== undefined) {
      const facts = { ...marks, make: target.make, target, aimPm: fit.fit.aimPm };
      return `${toMakeWords(facts, stepPm, chosen)}.`;
    }
    const clearance = madeClearance(inner, outer, fit.fit);
    if (clearance === null || clearance.chance === null) {
      return `${noClearanceWords(marks, stillToCut(inner, outer))}.`;
    }
    const pair = fit.pairs.find(
      (one) => one.internalPieceId === inner.piece.id && one.externalPieceId === outer.piece.id,
    );
    const out = [inner, outer].find(({ leftOut }) => leftOut)?.piece.mark ?? null;
    const facts = {
      ...marks,
      ...clearance,
      chance: clearance.chance,
      state: pair?.state ?? null,
      apart: fit.leftOut.has(cellKey(inner.piece.id, outer.piece.id)),
      leftOut: out,
    };
    const final = pair?.state === 'final' ? ` ${undoInListWords}` : '';
    return `${pairWords(facts, stepPm, chosen)}.${final}`;
  }
}

function PairButtons(props: {
  fit: FitView;
  internal: FitPiece;
  external: FitPiece;
  acts: ReturnType<typeof usePairActs>;
}) {
  const { fit, internal, external, acts } = props;
  const { view } = useJob();
  const [inner, outer] = [internal.piece.id, external.piece.id];
  const state = pairRow(view.sheet.pairs, fit.fit.id, inner, outer)?.state;
  if (state === 'final' || internal.size === null || external.size === null) return null;
  const settle = (to: 'locked' | 'left out' | 'undone') => void acts.settle(inner, outer, to);
  return (
    <>
      {state !== 'locked' && (
        <Button disabled={acts.busy} onClick={() => settle('locked')}>
          Keep together
        </Button>
      )}
      {state !== 'left out' && (
        <Button disabled={acts.busy} onClick={() => settle('left out')}>
          Keep apart
        </Button>
      )}
      {(state === 'locked' || state === 'left out') && (
        <Button disabled={acts.busy} onClick={() => settle('undone')}>
          Leave it to the pairing
        </Button>
      )}
    </>
  );
}
