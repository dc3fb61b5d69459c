'use client';

import { useRef } from 'react';
import type { ChosenPair, FitView } from '@/lib/rules/fit-view';
import { clearanceVerdict } from '@/lib/text/matrix-words';
import { asMadeWords } from '@/lib/text/pair-record-words';
import { shownSize } from '@/lib/text/shown-size';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { When } from '../primitives/when';
import { VerdictMark } from '../verdict/verdict-mark';
import { PairFlagNote } from './pair-flag-note';
import { PairRecord } from './pair-record';
import { UndoPair } from './undo-pair';
import type { PairActs } from './use-pair-acts';
import styles from './pairs.module.css';

type Props = {
  fit: FitView;
  pair: ChosenPair;
  marks: { internal: string; external: string };
  acts: PairActs;
  stepPm: number;
};

/** One pair: its clearance and how well that is known, and the button that makes it final or undoes it. */
export function PairItem({ fit, pair, marks, acts, stepPm }: Props) {
  const { chosen } = useJob();
  const { internal, external } = marks;
  const name = `${external} in ${internal}`;
  const clear = shownSize(
    { valuePm: pair.clearancePm, expandedPm: Math.max(1, pair.expandedPm) },
    stepPm,
    chosen,
  );
  const isFinal = pair.state === 'final';
  const row = useRef<HTMLLIElement>(null);
  // The button that was pressed is gone: the keyboard goes on from the row.
  const goOnHere = () => row.current?.focus({ preventScroll: true });
  return (
    <li ref={row} tabIndex={-1} data-flag={pair.flag === null ? undefined : ''}>
      <span className={styles.marks}>
        {external} <span className={styles.remark}>in</span> {internal}
      </span>{' '}
      <span className={styles.clear}>
        <b>{clear.value}</b> ± {clear.plusMinus}
      </span>{' '}
      <span className={styles.verdict}>
        <VerdictMark state={pair.verdict.state} side={pair.verdict.side} />
        {clearanceVerdict(pair.verdict, stepPm, chosen)}
      </span>
      {isFinal ? (
        <FinalWords pair={pair} stepPm={stepPm} />
      ) : (
        <span className={styles.final}>{pair.state === 'locked' ? 'kept together' : ''}</span>
      )}
      <span className={styles.act}>
        {isFinal ? (
          <UndoPair
            name={name}
            busy={acts.busy}
            onUndo={(reason) => void acts.undo(pair, reason).then(goOnHere)}
            onLeave={goOnHere}
          />
        ) : (
          <Button disabled={acts.busy} onClick={() => void acts.makeFinal(pair).then(goOnHere)}>
            Make final<span className="unseen"> {name}</span>
          </Button>
        )}
      </span>
      {pair.flag !== null && (
        <PairFlagNote fit={fit} pair={pair} acts={acts} stepPm={stepPm} onStood={goOnHere} />
      )}
      {isFinal && <PairRecord fit={fit} pair={pair} acts={acts} stepPm={stepPm} />}
    </li>
  );
}

/** What a final pair was recorded as: its mark, its clearance as made, who made it final and when. */
function FinalWords({ pair, stepPm }: { pair: ChosenPair; stepPm: number }) {
  const { view, chosen } = useJob();
  const kept = pair.pair!;
  const by = view.sheet.people.find((one) => one.id === kept.personId)?.name;
  return (
    <span className={styles.final}>
      final{kept.mark === '' ? '' : `, mark ${kept.mark}`}
      {kept.clearancePm === null
        ? ''
        : `, made with ${asMadeWords(kept.clearancePm, kept.uncertaintyPm, stepPm, chosen)}`}
      {by === undefined ? '' : `, ${by}`}
      {kept.decidedAt !== null && (
        <>
          , <When at={kept.decidedAt} />
        </>
      )}
    </span>
  );
}
