'use client';

import { useState } from 'react';
import type { ChosenPair, FitView } from '@/lib/rules/fit-view';
import { pairMarkTaken } from '@/lib/rules/pair-mark-taken';
import { lookWords, markTakenWords } from '@/lib/text/pair-record-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import { When } from '../primitives/when';
import type { PairActs } from './use-pair-acts';
import styles from './pairs.module.css';

type Props = { fit: FitView; pair: ChosenPair; acts: PairActs; stepPm: number };

/** What was done with a final pair, by whom and when; and the mark that is stamped on both its pieces. */
export function PairRecord({ fit, pair, acts, stepPm }: Props) {
  const { view, chosen } = useJob();
  const kept = pair.pair;
  const [mark, setMark] = useState(kept?.mark ?? '');
  if (kept === null) return null;
  const other = pairMarkTaken(fit, pair, mark);
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const taken =
    other === null
      ? undefined
      : markTakenWords(mark.trim(), markOf(other.externalPieceId), markOf(other.internalPieceId));
  const by = (id: string | null) => view.sheet.people.find((one) => one.id === id)?.name ?? null;
  return (
    <details className={styles.record}>
      <summary>
        Record<span className="unseen"> of pair {kept.mark}</span>
      </summary>
      <ol>
        {(kept.looks ?? []).map((look) => (
          <li key={look.at}>
            <When at={look.at} />: {lookWords({ ...look, by: by(look.personId) }, stepPm, chosen)}
          </li>
        ))}
      </ol>
      <form
        className={styles.markForm}
        onSubmit={(event) => {
          event.preventDefault();
          if (taken === undefined) void acts.markAs(pair, mark.trim());
        }}
      >
        <Field
          label="Pair mark, on both pieces"
          value={mark}
          maxLength={24}
          error={taken}
          onChange={(event) => setMark(event.target.value)}
        />
        <Button
          type="submit"
          disabled={acts.busy || taken !== undefined || mark.trim() === kept.mark}
        >
          Keep the mark
        </Button>
      </form>
    </details>
  );
}
