import type { HotCold } from '@/lib/rules/heat/hot-cold';
import { hotClearance, temperatureFigure } from '@/lib/text/heat-words';
import type { Shown } from '@/lib/text/shown-size';
import { Table } from '../primitives/table';
import cells from '../primitives/table.module.css';

type Props = { hot: HotCold; names: { outer: string; inner: string }; shown: Shown };

/** What the chart shows, in rows; every figure is an estimate. */
export function HotColdTable({ hot, names, shown }: Props) {
  const rows = [
    ...hot.soaked.map(({ temperatureC, clearancePm }) => ({
      outerC: temperatureC,
      innerC: temperatureC,
      clearancePm,
      isTight: hot.tight === 'soaked' && temperatureC === hot.tightestSoaked.temperatureC,
      isBad: false,
    })),
    { ...hot.bad, isTight: hot.tight === 'bad', isBad: true },
  ];
  return (
    <Table caption="Clearance hot and cold, estimated" captionHidden>
      <thead>
        <tr>
          <th scope="col" className={cells.figure}>
            {names.outer}, °C
          </th>
          <th scope="col" className={cells.figure}>
            {names.inner}, °C
          </th>
          <th scope="col" className={cells.figure}>
            {shown.unit === 'mm' ? 'mm' : 'inches'}, about
          </th>
          <th scope="col">
            <span className="unseen">Remark</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={`${row.outerC} ${row.innerC} ${row.isBad}`}>
            <td className={cells.figure}>{temperatureFigure(row.outerC, shown)}</td>
            <td className={cells.figure}>{temperatureFigure(row.innerC, shown)}</td>
            <td className={cells.figure}>{hotClearance(row.clearancePm, shown)}</td>
            <td>
              {[row.isBad ? 'the bad moment' : '', row.isTight ? 'tightest' : '']
                .filter(Boolean)
                .join(', ')}
            </td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}
