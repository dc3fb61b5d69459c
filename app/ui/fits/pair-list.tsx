'use client';

import { startTransition, useEffect, useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { allInside } from '@/lib/rules/all-inside';
import { noFreePartnerWords } from '@/lib/text/fits-sheet-words';
import { purposeOptions, purposeWords } from '@/lib/text/pairing-words';
import { tightCareWords } from '@/lib/text/ways-words';
import { useJob } from '../job/job-provider';
import { Choice } from '../primitives/choice';
import { PairItem } from './pair-item';
import { PairMoves } from './pair-moves';
import { PairShortage } from './pair-shortage';
import { stepOf } from './step-of';
import { UndonePairs } from './undone-pairs';
import { usePairActs } from './use-pair-acts';
import styles from './pairs.module.css';

/** What the pairs are chosen for, who moved, what stands in the way, and each pair with what can be done. */
export function PairList({ fit }: { fit: FitView }) {
  const { view, chosen } = useJob();
  const acts = usePairActs(fit);
  const stepPm = stepOf(view, fit);
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const most = useGrowing(fit.pairs.length);
  const purpose = fit.fit.purpose ?? 'worst best';
  const care = tightCareWords(fit.fit.minPm);
  return (
    <section aria-label="Pairs" className={styles.pairs}>
      <h2 className={styles.small}>Pairs</h2>
      <Choice
        label="The pairing is to be"
        name="purpose"
        value={purpose}
        options={purposeOptions}
        disabled={acts.busy}
        onChange={(to) => void acts.choose(to)}
      />
      <p className={styles.sentence}>
        {purposeWords(purpose, { pairs: fit.pairs.length, allInside: allInside(fit) }, chosen)}{' '}
        {fit.withoutPartner.length > 0 && (
          <>
            <b className={styles.mark}>{fit.withoutPartner.map(markOf).join(', ')}</b>{' '}
            {noFreePartnerWords(fit.withoutPartner.length)}
          </>
        )}
      </p>
      <PairMoves fit={fit} stepPm={stepPm} />
      <PairShortage fit={fit} stepPm={stepPm} />
      {acts.trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {acts.trouble}
        </p>
      )}
      <ul className={styles.rows}>
        {fit.pairs.slice(0, most).map((pair) => (
          <PairItem
            key={`${pair.internalPieceId}${pair.externalPieceId}`}
            fit={fit}
            pair={pair}
            marks={{
              internal: markOf(pair.internalPieceId),
              external: markOf(pair.externalPieceId),
            }}
            acts={acts}
            stepPm={stepPm}
          />
        ))}
      </ul>
      <UndonePairs fit={fit} stepPm={stepPm} />
      {care !== null && <p className={styles.care}>{care}</p>}
    </section>
  );
}

const firstPairs = 40;

/** How many rows are drawn: a screenful and more at once, the rest bit by bit while the page stays alive. */
function useGrowing(count: number): number {
  const [most, setMost] = useState(firstPairs);
  useEffect(() => {
    if (most < count) startTransition(() => setMost(count));
  }, [most, count]);
  return most;
}
