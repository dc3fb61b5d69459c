'use client';

import type { ControlChart } from '@/lib/rules/control-view';
import type { RunView } from '@/lib/rules/run-view';
import { patternNames } from '@/lib/text/control-words';
import { formatLength } from '@/lib/units/format-length';
import { useJob } from '../job/job-provider';
import { Table } from '../primitives/table';

type Props = { chart: ControlChart; track: 'main' | 'spread'; run: RunView };

/** One plot of a control chart as a table: every point, its limits, and what is signalled there. */
export function ControlTable({ chart, track, run }: Props) {
  const { chosen } = useJob();
  const isSize = track === 'main' && chart.control !== 'cusum';
  const figure = (mm: number) =>
    formatLength(Math.round(mm * 1e9) + (isSize ? run.nominalPm : 0), {
      ...chosen,
      decimals: chosen.unit === 'mm' ? 4 : 5,
    });
  const low = track === 'main' ? chart.low : null;
  const points = (track === 'main' ? chart.main : chart.spread) ?? [];
  const signals = new Map<number, string[]>();
  for (const signal of chart.signals) {
    if (signal.track !== track) continue;
    const said = signal.rule === 'limit' ? 'Beyond its limit' : patternNames[signal.rule];
    signals.set(signal.ordinal, [...(signals.get(signal.ordinal) ?? []), said]);
  }
  return (
    <Table caption={`Points of the control chart, ${track}`} captionHidden>
      <thead>
        <tr>
          <th scope="col">{chart.grouped ? 'Group' : 'Piece'}</th>
          <th scope="col">{low === null ? 'Value' : 'Upper sum'}</th>
          {low !== null && <th scope="col">Lower sum</th>}
          <th scope="col">Lower limit</th>
          <th scope="col">Upper limit</th>
          <th scope="col">Signal</th>
        </tr>
      </thead>
      <tbody>
        {points.map((point, index) => (
          <tr key={point.ordinal}>
            <th scope="row">{point.mark}</th>
            <td>{figure(point.valueMm)}</td>
            {low !== null && <td>{figure(low[index]!.valueMm)}</td>}
            <td>{figure(point.lowerMm)}</td>
            <td>{figure(point.upperMm)}</td>
            <td>{signals.get(point.ordinal)?.join(', ') ?? ''}</td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}
