'use client';

import { cellKey } from '@/lib/rules/cells';
import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import { madeClearance } from '@/lib/rules/made-clearance';
import { matrixOrder } from '@/lib/rules/matrix-order';
import { clearanceSteps, stepWords } from '@/lib/text/fit-words';
import { useJob } from '../job/job-provider';
import { VerdictMark } from '../verdict/verdict-mark';
import { clearanceStepOf } from './step-of';
import styles from './paper.module.css';

/** Past this many on a side the table of clearances is left to the screen. */
export const printedMost = 24;
const columnsMost = 8;

/** The table of clearances on paper, in stretches of columns that the sheet is wide enough for. */
export function PaperMatrix({ fit }: { fit: FitView }) {
  const { view, chosen } = useJob();
  const countPm = clearanceStepOf(view, fit, chosen.unit);
  const { rows, columns } = matrixOrder(fit);
  const stretches = Array.from({ length: Math.ceil(columns.length / columnsMost) }, (_, index) =>
    columns.slice(index * columnsMost, (index + 1) * columnsMost),
  );
  return stretches.map((stretch) => (
    <table key={stretch[0]!.piece.id} className={styles.matrix}>
      <caption>Clearance of every pair, {stepWords(chosen, countPm)}</caption>
      <thead>
        <tr>
          <td />
          {stretch.map(({ piece, leftOut }) => (
            <th key={piece.id} scope="col" className={leftOut ? 'struck' : undefined}>
              {piece.mark}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((internal) => (
          <tr key={internal.piece.id}>
            <th scope="row" className={internal.leftOut ? 'struck' : undefined}>
              {internal.piece.mark}
            </th>
            {stretch.map((external) => (
              <Cell
                key={external.piece.id}
                fit={fit}
                internal={internal}
                external={external}
                countPm={countPm}
              />
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  ));
}

function Cell(props: { fit: FitView; internal: FitPiece; external: FitPiece; countPm: number }) {
  const { fit, internal, external, countPm } = props;
  const { chosen } = useJob();
  const clearance = madeClearance(internal, external, fit.fit);
  if (clearance === null) return <td />;
  const [inner, outer] = [internal.piece.id, external.piece.id];
  const pair = fit.pairs.find(
    (one) => one.internalPieceId === inner && one.externalPieceId === outer,
  );
  const isOut = fit.leftOut.has(cellKey(inner, outer)) || internal.leftOut || external.leftOut;
  return (
    <td data-state={pair?.state}>
      <span className={isOut ? 'struck' : undefined}>
        {clearanceSteps(clearance.clearancePm, chosen, countPm)}
      </span>{' '}
      {clearance.verdict.state !== 'out' && (
        <VerdictMark state={clearance.verdict.state} side={clearance.verdict.side} />
      )}
    </td>
  );
}
