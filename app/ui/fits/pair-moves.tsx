'use client';

import { useMemo } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { pairMoves, type PairMove } from '@/lib/rules/pair-moves';
import { moreMovesWords, moveWords, type MoveFacts } from '@/lib/text/pairing-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { useLastPartners } from './use-last-partners';
import styles from './pairs.module.css';

const saidMost = 6;

/** The pieces that changed partners since this device last took note. */
export function PairMoves({ fit, stepPm }: { fit: FitView; stepPm: number }) {
  const { view, chosen } = useJob();
  const { last, note } = useLastPartners(fit);
  const moves = useMemo(() => (last === null ? [] : pairMoves(last, fit)), [last, fit]);
  if (moves.length === 0) return null;
  return (
    <div className={styles.moves} role="status">
      <ul>
        {moves.slice(0, saidMost).map((move) => {
          const { mark, says } = moveWords(factsOf(move), stepPm, chosen);
          return (
            <li key={move.externalPieceId}>
              <b className={styles.mark}>{mark}</b> {says}
            </li>
          );
        })}
        {moves.length > saidMost && <li>{moreMovesWords(moves.length - saidMost)}</li>}
      </ul>
      <Button onClick={note}>Noted</Button>
    </div>
  );

  function factsOf({ externalPieceId, from, to }: PairMove): MoveFacts {
    const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
    const { clearance } = from;
    return {
      mark: markOf(externalPieceId),
      partName:
        view.parts.find(({ part }) => part.id === fit.internalFeature.partId)?.part.name ?? 'part',
      from: {
        mark: markOf(from.internalPieceId),
        clearancePm: clearance?.clearancePm ?? null,
        because: clearance === null ? null : becauseOf(clearance.verdict),
        goneTo: from.goneTo === null ? null : markOf(from.goneTo),
      },
      to:
        to === null
          ? null
          : { mark: markOf(to.internalPieceId), clearancePm: to.clearance.clearancePm },
    };
  }
}

function becauseOf({
  state,
  side,
}: NonNullable<PairMove['from']['clearance']>['verdict']): MoveFacts['from']['because'] {
  if (state === 'unsure') return 'unsure';
  if (state !== 'out') return null;
  return side === 'bottom' ? 'tight' : 'slack';
}
