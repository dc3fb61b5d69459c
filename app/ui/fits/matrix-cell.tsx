'use client';

import { memo } from 'react';
import type { ChosenPair, FitPiece } from '@/lib/rules/fit-view';
import { madeClearance } from '@/lib/rules/made-clearance';
import type { Target } from '@/lib/rules/target';
import type { Fit } from '@/lib/schema/fit';
import { aimSteps, clearanceSteps } from '@/lib/text/fit-words';
import { noClearanceWords, pairWords, toMakeWords } from '@/lib/text/matrix-words';
import type { Shown } from '@/lib/text/shown-size';
import { VerdictMark } from '../verdict/verdict-mark';
import styles from './matrix.module.css';

export type CellProps = {
  fit: Fit;
  internal: FitPiece;
  external: FitPiece;
  /** The pair these two are, decided or chosen. */
  pair: ChosenPair | undefined;
  toMake: Target | undefined;
  /** A person keeps these two apart. */
  apart: boolean;
  row: number;
  column: number;
  /** Where it stands in its row, px. */
  leftPx: number;
  /** The one cell of the table that Tab comes to. */
  isStop: boolean;
  stepPm: number;
  /** What the figures count in, pm. */
  countPm: number;
  shown: Shown;
};

/** One pair of the table: its clearance with its mark, the aim of a piece to make, or nothing. */
export const MatrixCell = memo(function MatrixCell(props: CellProps) {
  const { fit, internal, external, pair, toMake, apart, shown, stepPm, countPm } = props;
  const marks = { internal: internal.piece.mark, external: external.piece.mark };
  const place = {
    role: 'gridcell',
    'aria-colindex': props.column + 2,
    'data-at': `${props.row} ${props.column}`,
    tabIndex: props.isStop ? 0 : -1,
    style: { left: props.leftPx },
  } as const;
  if (toMake !== undefined) {
    const aim = aimSteps(fit.aimPm, shown, countPm);
    const facts = { ...marks, make: toMake.make, target: toMake, aimPm: fit.aimPm };
    return (
      <div
        {...place}
        className={`${styles.cell} ${styles.toMake}`}
        data-long={aim.length > 4 || undefined}
      >
        <span aria-hidden>aim {aim}</span>
        <span className="unseen">{toMakeWords(facts, stepPm, shown)}</span>
      </div>
    );
  }
  const made = madeClearance(internal, external, fit);
  const clearance = made === null ? null : (pair ?? made);
  const out = outOf(internal, external);
  if (clearance === null || clearance.chance === null) {
    const words = noClearanceWords(marks, stillToCut(internal, external));
    return <div {...place} className={styles.cell} data-out={out} aria-label={words} />;
  }
  const { verdict, clearancePm, chance } = clearance;
  const state = pair?.state ?? null;
  const leftOut = internal.leftOut ? marks.internal : external.leftOut ? marks.external : null;
  return (
    <div
      {...place}
      className={styles.cell}
      data-state={state ?? (apart ? 'apart' : verdict.state)}
      data-out={out}
      data-flag={(pair?.flag ?? null) === null ? undefined : ''}
    >
      <span className={apart ? 'struck' : undefined} aria-hidden>
        {clearanceSteps(clearancePm, shown, countPm)}
      </span>
      <span className="unseen">
        {pairWords(
          { ...marks, clearancePm, verdict, chance, state, apart, leftOut },
          stepPm,
          shown,
        )}
      </span>
      {verdict.state !== 'out' && <VerdictMark state={verdict.state} side={verdict.side} />}
    </div>
  );
});

/** The marks of those of two pieces that metal is still to come off. */
export function stillToCut(...pieces: readonly FitPiece[]): string[] {
  return pieces.flatMap(({ piece, stillToCut: is }) => (is ? [piece.mark] : []));
}

/** Whether a line goes through the row, the column or both. */
function outOf(internal: FitPiece, external: FitPiece): string | undefined {
  const lines = [internal.leftOut ? 'row' : '', external.leftOut ? 'column' : ''].join(' ').trim();
  return lines === '' ? undefined : lines;
}
