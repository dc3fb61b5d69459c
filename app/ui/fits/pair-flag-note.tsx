'use client';

import type { ChosenPair, FitView } from '@/lib/rules/fit-view';
import { changeWords, flagWords } from '@/lib/text/pair-flag-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import type { PairActs } from './use-pair-acts';
import styles from './pairs.module.css';

type Props = {
  fit: FitView;
  pair: ChosenPair;
  acts: PairActs;
  stepPm: number;
  /** It was looked at and let stand; this note is gone then. */
  onStood: () => void;
};

/** What has changed under a final pair since somebody looked at it: what, from what to what, and two ways on. */
export function PairFlagNote({ pair, acts, stepPm, onStood }: Props) {
  const { view, chosen } = useJob();
  const { flag } = pair;
  if (flag === null) return null;
  const piece = (id: string) => view.sheet.pieces.find((one) => one.id === id)?.mark ?? '';
  const gauge = (id: string) => view.sheet.gauges.find((one) => one.id === id)?.name ?? 'a gauge';
  const names = {
    internal: piece(pair.internalPieceId),
    external: piece(pair.externalPieceId),
    piece,
    gauge,
  };
  return (
    <div className={styles.flag}>
      <p>
        <b>{flagWords(flag.was, flag.now, stepPm, chosen)}</b>
      </p>
      <ul>
        {flag.changes.map((change) => (
          <li key={JSON.stringify(change)}>{changeWords(change, names, chosen)}</li>
        ))}
      </ul>
      <Button disabled={acts.busy} onClick={() => void acts.letStand(pair).then(onStood)}>
        Looked at: let it stand
        <span className="unseen">
          , {names.external} in {names.internal}
        </span>
      </Button>
    </div>
  );
}
