'use client';

import type { ChosenPair, FitView } from '@/lib/rules/fit-view';
import { uuidv7 } from '@/lib/outbox/ids';
import { clearanceFigure } from '@/lib/text/fit-words';
import { shownSize } from '@/lib/text/shown-size';
import { verdictWords } from '@/lib/text/verdict';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { VerdictMark } from '../verdict/verdict-mark';
import styles from './fits.module.css';

/** The pairs as they are chosen, each with its clearance and the button that makes it final. */
export function PairList({ fit }: { fit: FitView }) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const firstCell = fit.internals.find(({ size }) => size !== null);
  const step =
    firstCell === undefined
      ? 1_000_000
      : resolutionOf(
          view,
          view.cell(firstCell.piece.id, fit.internalFeature.id),
          fit.internalFeature,
        );
  return (
    <section aria-label="Pairs" className={styles.pairs}>
      <h2 className={styles.small}>Pairs</h2>
      <p className={styles.sentence}>
        {fit.pairs.length === 0
          ? 'No pair lies inside the fit yet.'
          : 'Chosen so the worst pair is best.'}{' '}
        {fit.withoutPartner.length > 0 && (
          <>
            <b className={styles.figureBold}>{fit.withoutPartner.map(markOf).join(', ')}</b>{' '}
            {fit.withoutPartner.length === 1 ? 'suits' : 'suit'} no free partner.
          </>
        )}
      </p>
      <ul className={styles.pairRows}>
        {fit.pairs.map((pair) => {
          const expandedPm = 2 * pair.standardPm;
          const clear = shownSize({ valuePm: pair.clearancePm, expandedPm }, step, chosen);
          const internal = markOf(pair.internalPieceId);
          const external = markOf(pair.externalPieceId);
          return (
            <li key={`${pair.internalPieceId}${pair.externalPieceId}`}>
              <span className={styles.pairMarks}>
                {external} <span className={styles.remark}>in</span> {internal}
              </span>
              <span className={styles.clear}>
                <b>{clear.value}</b> ± {clear.plusMinus}
              </span>
              <span className={styles.pairVerdict}>
                <VerdictMark state={pair.verdict.state} side={pair.verdict.side} />
                {verdictWords(pair.verdict, { ...chosen, resolutionPm: null })}
              </span>
              {pair.state === 'final' ? (
                <span className={styles.finalWords}>
                  final{pair.pair?.mark === '' ? '' : `, mark ${pair.pair?.mark}`}
                  {pair.changedSince && (
                    <b className={styles.warm}>
                      {' '}
                      was {clearanceFigure(pair.pair?.clearancePm ?? 0, chosen)} when recorded
                    </b>
                  )}
                </span>
              ) : (
                pair.state === 'locked' && <span className={styles.finalWords}>kept together</span>
              )}
              {pair.state === 'final' ? (
                <Button disabled={busy} onClick={() => undo(pair)}>
                  Undo<span className="unseen"> pair {internal}</span>
                </Button>
              ) : (
                <Button disabled={busy} onClick={() => makeFinal(pair)}>
                  Make final
                  <span className="unseen">
                    , {external} in {internal}
                  </span>
                </Button>
              )}
            </li>
          );
        })}
      </ul>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </section>
  );

  function makeFinal(pair: ChosenPair) {
    const ordinal = fit.internals.find(({ piece }) => piece.id === pair.internalPieceId);
    const decision = {
      state: 'final',
      mark: String(ordinal?.piece.ordinal ?? ''),
      clearancePm: pair.clearancePm,
      uncertaintyPm: Math.round(2 * pair.standardPm),
      decidedAt: new Date().toISOString(),
      personId: chosen.personId,
    };
    if (pair.pair !== null) {
      void change('pair', pair.pair.id, { version: pair.pair.version, ...decision });
      return;
    }
    void make('pair', {
      id: uuidv7(),
      jobId: fit.fit.jobId,
      fitId: fit.fit.id,
      internalPieceId: pair.internalPieceId,
      externalPieceId: pair.externalPieceId,
      ...decision,
    });
  }

  function undo(pair: ChosenPair) {
    if (pair.pair === null) return;
    void change('pair', pair.pair.id, {
      version: pair.pair.version,
      state: 'undone',
      decidedAt: new Date().toISOString(),
      personId: chosen.personId,
    });
  }
}
