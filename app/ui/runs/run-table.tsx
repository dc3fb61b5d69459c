'use client';

import type { RunPoint, RunView, SetAside } from '@/lib/rules/run-view';
import { eventWords } from '@/lib/text/event-words';
import { shownLength, shownSize } from '@/lib/text/shown-size';
import { verdictWords } from '@/lib/text/verdict';
import { resolutionOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { Table } from '../primitives/table';

/** The run chart as a table: every piece in order, its size and verdict, and what came after it. */
export function RunTable({ run }: { run: RunView }) {
  const several = run.features.length > 1;
  const rows = [...run.points, ...run.aside].sort((a, b) => a.ordinal - b.ordinal);
  return (
    <Table caption="Pieces in the order made" captionHidden>
      <thead>
        <tr>
          <th scope="col">Piece</th>
          <th scope="col">Size</th>
          {several && <th scope="col">From its nominal</th>}
          <th scope="col">Verdict</th>
          <th scope="col">After it</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <Row key={row.ordinal} run={run} row={row} several={several} />
        ))}
      </tbody>
    </Table>
  );
}

type RowProps = { run: RunView; row: RunPoint | SetAside; several: boolean };

function Row({ run, row, several }: RowProps) {
  const { view, chosen } = useJob();
  const { ordinal, mark, feature, cell, valuePm } = row;
  const step = resolutionOf(view, cell, feature);
  const after = run.events
    .filter((event) => event.afterOrdinal === ordinal)
    .map((event) => eventWords(event, chosen))
    .map(({ title, note }) => `${title}, ${note}`);
  return (
    <tr>
      <th scope="row">{mark}</th>
      <td>{'size' in row ? sizeWords(row) : <s className="struck">{struckSize()}</s>}</td>
      {several && <td>{shownLength(valuePm, step, chosen, 'always')}</td>}
      <td>
        {'size' in row ? verdict() : `set aside${row.reason === '' ? '' : `, ${row.reason}`}`}
      </td>
      <td>{after.join('; ')}</td>
    </tr>
  );

  function sizeWords({ size }: RunPoint): string {
    const { value, plusMinus } = shownSize(size, step, chosen);
    return `${value} \u00b1 ${plusMinus}`;
  }

  function struckSize(): string {
    return shownLength(valuePm + (several ? feature.nominalPm : 0), step, chosen);
  }

  function verdict(): string {
    return cell.verdict === null
      ? ''
      : verdictWords(cell.verdict, { ...chosen, resolutionPm: step });
  }
}
