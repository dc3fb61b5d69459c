'use client';

import { clearanceOf, type FitPiece, type FitView } from '@/lib/rules/fit-view';
import { clearanceSteps } from '@/lib/text/fit-words';
import { verdictWords } from '@/lib/text/verdict';
import { useJob } from '../job/job-provider';
import { VerdictMark } from '../verdict/verdict-mark';
import styles from './fits.module.css';

type Props = {
  fit: FitView;
  internal: FitPiece;
  external: FitPiece;
  onAsk: (pieceId: string) => void;
  onChoose: () => void;
};

/** One pair of the table: its clearance with its mark, the aim of a piece to make, or nothing. */
export function MatrixCell({ fit, internal, external, onAsk, onChoose }: Props) {
  const { chosen } = useJob();
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
      <button type="button" onClick={onChoose}>
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
