'use client';

import { useMemo, useRef } from 'react';
import { cellKey } from '@/lib/rules/cells';
import type { FitPiece, FitView } from '@/lib/rules/fit-view';
import { matrixOrder } from '@/lib/rules/matrix-order';
import { targetPair } from '@/lib/rules/target-pair';
import { stepWords } from '@/lib/text/fit-words';
import { shownSize } from '@/lib/text/shown-size';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { MatrixCell } from './matrix-cell';
import { MatrixHead } from './matrix-head';
import { MatrixLegend } from './matrix-legend';
import { MatrixLine } from './matrix-line';
import { drawnOf } from './matrix-window';
import { clearanceStepOf, stepOf } from './step-of';
import { columnPx, headPx, placeOf, useMatrixView } from './use-matrix-view';
import styles from './matrix.module.css';

type Props = { fit: FitView; onAsk: (pieceId: string) => void };

/** The clearance of every measured piece with every partner, by size; only what is in view is drawn. */
export function ClearanceMatrix({ fit, onAsk }: Props) {
  const { view, chosen } = useJob();
  const { rows, columns } = useMemo(() => matrixOrder(fit), [fit]);
  const found = useMemo(() => lookUp(fit), [fit]);
  const stepPm = stepOf(view, fit);
  const countPm = clearanceStepOf(view, fit, chosen.unit);
  const box = useRef<HTMLDivElement>(null);
  const ids = useMemo(
    () => ({
      rows: rows.map(({ piece }) => piece.id),
      columns: columns.map(({ piece }) => piece.id),
    }),
    [rows, columns],
  );
  const table = useMatrixView(box, ids);
  const { rowPx, drawn, active } = table;
  // Before anybody has been here, Tab comes to the first pair.
  const stop = active ?? { row: 0, column: 0 };
  const seenRows = drawnOf(drawn.rows, stop.row, rows.length);
  const seenColumns = drawnOf(drawn.columns, stop.column, columns.length);
  const { unit, decimal } = chosen;
  const shown = useMemo(() => ({ unit, decimal }), [unit, decimal]);
  const isStop = (row: number, column: number) => stop.row === row && stop.column === column;

  return (
    <section aria-label="Clearance of every pair" className={styles.panel}>
      <div className={styles.title}>
        <h2>Clearance of every pair</h2>
        <span className={styles.remark}>{stepWords(chosen, countPm)}</span>
        <MatrixLegend />
      </div>
      <div className={styles.box} ref={box} onScroll={table.look}>
        <div
          role="grid"
          tabIndex={-1}
          className={styles.grid}
          aria-label={`Clearance of every pair, ${stepWords(chosen, countPm)}; interference has a minus`}
          aria-rowcount={rows.length + 1}
          aria-colcount={columns.length + 1}
          style={{
            width: headPx + columns.length * columnPx,
            height: (rows.length + 1) * rowPx,
            ['--row' as string]: `${rowPx}px`,
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter' || event.key === ' ') ask(event);
            else table.onKeyDown(event);
          }}
          onFocus={table.onFocus}
          onClick={ask}
        >
          <div role="row" aria-rowindex={1} className={styles.heads}>
            <div role="columnheader" aria-colindex={1} className={styles.corner}>
              <span className="unseen">Pieces</span>
            </div>
            {seenColumns.map((column) => (
              <MatrixHead
                key={columns[column]!.piece.id}
                piece={columns[column]!}
                side="column"
                size={sizeOf(columns[column]!, fit.externalFeature)}
                index={column}
                leftPx={headPx + column * columnPx}
                isStop={isStop(-1, column)}
              />
            ))}
          </div>
          {seenRows.map((row) => {
            const internal = rows[row]!;
            return (
              <div
                key={internal.piece.id}
                role="row"
                aria-rowindex={row + 2}
                className={styles.row}
                style={{ top: (row + 1) * rowPx }}
              >
                <MatrixHead
                  piece={internal}
                  side="row"
                  size={sizeOf(internal, fit.internalFeature)}
                  index={row}
                  leftPx={0}
                  isStop={isStop(row, -1)}
                />
                {seenColumns.map((column) => {
                  const external = columns[column]!;
                  const key = cellKey(internal.piece.id, external.piece.id);
                  return (
                    <MatrixCell
                      key={external.piece.id}
                      fit={fit.fit}
                      internal={internal}
                      external={external}
                      pair={found.pairs.get(key)}
                      toMake={found.toMake.get(key)}
                      apart={fit.leftOut.has(key)}
                      row={row}
                      column={column}
                      leftPx={headPx + column * columnPx}
                      isStop={isStop(row, column)}
                      stepPm={stepPm}
                      countPm={countPm}
                      shown={shown}
                    />
                  );
                })}
              </div>
            );
          })}
        </div>
      </div>
      <MatrixLine
        fit={fit}
        internal={active === null ? null : (rows[active.row] ?? null)}
        external={active === null ? null : (columns[active.column] ?? null)}
        stepPm={stepPm}
      />
    </section>
  );

  function sizeOf({ piece, size, stillToCut }: FitPiece, feature: FitView['internalFeature']) {
    if (size === null || stillToCut) return null;
    return shownSize(size, resolutionOf(view, view.cell(piece.id, feature.id), feature), chosen)
      .value;
  }

  /** A piece to make is asked for by its cell; every other cell is told of under the table. */
  function ask(event: React.MouseEvent | React.KeyboardEvent) {
    const place = placeOf(event.target);
    if (place === null) return;
    if (event.type === 'keydown') event.preventDefault();
    const [internal, external] = [rows[place.row], columns[place.column]];
    if (internal === undefined || external === undefined) return;
    const target = found.toMake.get(cellKey(internal.piece.id, external.piece.id));
    if (target !== undefined) onAsk(target.pieceId);
  }
}

/** Pairs and pieces to make by the cell they stand in. */
function lookUp({ pairs, toMake, toBore }: FitView) {
  return {
    pairs: new Map(pairs.map((p) => [keyOf(p), p])),
    toMake: new Map([...toMake, ...toBore].map((t) => [keyOf(targetPair(t)), t])),
  };
}

function keyOf(pair: { internalPieceId: string; externalPieceId: string }): string {
  return cellKey(pair.internalPieceId, pair.externalPieceId);
}
