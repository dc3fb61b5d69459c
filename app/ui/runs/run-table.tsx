'use client';

import type { RunView } from '@/lib/rules/run-view';
import { eventWords } from '@/lib/text/event-words';
import { shownSize } from '@/lib/text/shown-size';
import { verdictWords } from '@/lib/text/verdict';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { Table } from '../primitives/table';

/** The run chart as a table: every piece in order, its size and verdict, and what came after it. */
export function RunTable({ run }: { run: RunView }) {
  const { view, chosen } = useJob();
  return (
    <Table caption="Pieces in the order made" captionHidden>
      <thead>
        <tr>
          <th scope="col">Piece</th>
          <th scope="col">Size</th>
          <th scope="col">Verdict</th>
          <th scope="col">After it</th>
        </tr>
      </thead>
      <tbody>
        {run.points.map(({ ordinal, mark, feature, cell, size }) => {
          const step = resolutionOf(view, cell, feature);
          const shown = shownSize(size, step, chosen);
          const after = run.events.filter((event) => event.afterOrdinal === ordinal);
          return (
            <tr key={ordinal}>
              <th scope="row">{mark}</th>
              <td>
                {shown.value} ± {shown.plusMinus}
              </td>
              <td>
                {cell.verdict === null
                  ? ''
                  : verdictWords(cell.verdict, { ...chosen, resolutionPm: step })}
              </td>
              <td>
                {after
                  .map((event) => eventWords(event, chosen))
                  .map(({ title, note }) => `${title}, ${note}`)
                  .join('; ')}
              </td>
            </tr>
          );
        })}
      </tbody>
    </Table>
  );
}
