import { Table } from '../primitives/table';
import tables from '../primitives/table.module.css';
import styles from './fit-rules.module.css';
import type { FitRulesData } from './fit-rules-data';
import { fitTableRows } from './fit-table-rows';

/** What the two rules show, in words and figures. */
export function FitTable({ data }: { data: FitRulesData }) {
  const { internal, external, unit } = data;
  return (
    <Table caption={`${internal.title} with ${external.title.toLowerCase()}, ${unit}`}>
      <thead>
        <tr>
          <th scope="col">
            {internal.title}, {internal.feature}
          </th>
          <th scope="col">
            {external.title}, {external.feature}
          </th>
          <th scope="col" className={tables.figure}>
            clear
          </th>
          <th scope="col">verdict</th>
        </tr>
      </thead>
      <tbody>
        {fitTableRows(data).map((row) => (
          <tr key={`${row.internal} ${row.external}`}>
            <th scope="row">
              <MarkAndSize mark={row.internal} size={row.internalSize} />
            </th>
            <td>
              <MarkAndSize mark={row.external} size={row.externalSize} />
            </td>
            <td className={tables.figure}>{row.clear}</td>
            <td>{row.verdict}</td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}

function MarkAndSize({ mark, size }: { mark: string; size: string }) {
  return (
    <span className={styles.both}>
      <span className={tables.mark}>{mark}</span> {size}
    </span>
  );
}
