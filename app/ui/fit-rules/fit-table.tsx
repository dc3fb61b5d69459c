import { clearanceFigure } from '@/lib/text/fit-words';
import { shownLength, shownSize } from '@/lib/text/shown-size';
import { usualResolutionPm } from '@/lib/text/usual-resolution';
import { Table } from '../primitives/table';
import tables from '../primitives/table.module.css';
import type { FitRulesData, FitRulesPiece } from './fit-rules-data';

/** What the two rules show, in words and figures. */
export function FitTable({ data }: { data: FitRulesData }) {
  const { internal, external, ties, toMake, unit } = data;
  const stepPm = usualResolutionPm(data.resolutionPm, unit);
  const size = (piece: FitRulesPiece | undefined) =>
    piece === undefined
      ? ''
      : piece.expandedPm > 0
        ? shownSize({ valuePm: piece.sizePm, expandedPm: piece.expandedPm }, stepPm, data).value
        : shownLength(piece.sizePm, stepPm, data);
  const internalOf = (mark: string) => internal.pieces.find((piece) => piece.mark === mark);
  const externalOf = (mark: string) => external.pieces.find((piece) => piece.mark === mark);
  const paired = new Set([...ties, ...toMake].flatMap((tie) => [tie.internal, tie.external]));
  const alone = (pieces: readonly FitRulesPiece[]) =>
    pieces.filter(({ mark }) => !paired.has(mark));
  return (
    <Table caption={`${internal.title} with ${external.title.toLowerCase()}, ${unit}`}>
      <thead>
        <tr>
          <th scope="col">{internal.title}</th>
          <th scope="col" className={tables.figure}>
            {internal.feature}
          </th>
          <th scope="col">{external.title}</th>
          <th scope="col" className={tables.figure}>
            {external.feature}
          </th>
          <th scope="col" className={tables.figure}>
            clear
          </th>
          <th scope="col">verdict</th>
        </tr>
      </thead>
      <tbody>
        {ties.map((tie) => (
          <tr key={`${tie.internal} ${tie.external}`}>
            <th scope="row" className={tables.mark}>
              {tie.internal}
            </th>
            <td className={tables.figure}>{size(internalOf(tie.internal))}</td>
            <td className={tables.mark}>{tie.external}</td>
            <td className={tables.figure}>{size(externalOf(tie.external))}</td>
            <td className={tables.figure}>{clearanceFigure(tie.clearancePm, data)}</td>
            <td>{tie.state}</td>
          </tr>
        ))}
        {toMake.map((piece) => (
          <tr key={`${piece.internal} ${piece.external}`}>
            <th scope="row" className={tables.mark}>
              {piece.internal}
            </th>
            <td className={tables.figure}>{size(internalOf(piece.internal))}</td>
            <td className={tables.mark}>{piece.external}</td>
            <td className={tables.figure}>to {shownLength(piece.targetPm, stepPm, data)}</td>
            <td />
            <td>to make</td>
          </tr>
        ))}
        {alone(internal.pieces).map((piece) => (
          <tr key={piece.mark}>
            <th scope="row" className={tables.mark}>
              {piece.mark}
            </th>
            <td className={tables.figure}>{size(piece)}</td>
            <td />
            <td />
            <td />
            <td>no partner</td>
          </tr>
        ))}
        {alone(external.pieces).map((piece) => (
          <tr key={piece.mark}>
            <td />
            <td />
            <th scope="row" className={tables.mark}>
              {piece.mark}
            </th>
            <td className={tables.figure}>{size(piece)}</td>
            <td />
            <td>no partner</td>
          </tr>
        ))}
      </tbody>
    </Table>
  );
}
