import type { ControlPoint } from '@/lib/rules/control-tracks';
import type { ControlChart } from '@/lib/rules/control-view';
import { patternNames, trackNames } from '@/lib/text/control-words';
import type { LengthUnit } from '@/lib/units/picometres';
import { csvLength, csvText } from '../save/csv-cell';

/**
 * What a control chart plots as comma-separated values (RFC 4180), a row a point: turn, mark, value, middle and
 * limits, for sums the lower one as well, for pairs of plots the scatter with its own, and what is signalled there.
 */
export function controlCsv(chart: ControlChart, nominalPm: number, unit: LengthUnit): string {
  const isSum = chart.control === 'cusum';
  const names = trackNames(chart.control, chart.grouped);
  const figure = (mm: number, fromPm: number) => csvLength(Math.round(mm * 1e9) + fromPm, unit);
  const cells = (point: ControlPoint | undefined, fromPm: number) =>
    point === undefined
      ? ['', '', '', '']
      : [point.valueMm, point.centreMm, point.lowerMm, point.upperMm].map((mm) =>
          figure(mm, fromPm),
        );
  const heads = (name: string) =>
    [name, 'middle', 'lower limit', 'upper limit'].map((head) => `${head} ${unit}`);
  const spreadAt = new Map((chart.spread ?? []).map((point) => [point.ordinal, point]));
  const rows = chart.main.map((point, i) => {
    const said = chart.signals
      .filter(({ ordinal }) => ordinal === point.ordinal)
      .map(({ rule }) => (rule === 'limit' ? 'Beyond its limit' : patternNames[rule]));
    return [
      String(point.ordinal),
      csvText(point.mark),
      ...cells(point, isSum ? 0 : nominalPm),
      ...(chart.low === null ? [] : [figure(chart.low[i]!.valueMm, 0)]),
      ...(chart.spread === null ? [] : cells(spreadAt.get(point.ordinal), 0)),
      csvText(said.join('; ')),
    ].join(',');
  });
  const head = [
    'turn',
    'mark',
    ...heads(isSum ? `upper ${names.main}` : names.main),
    ...(chart.low === null ? [] : [`lower ${names.main} ${unit}`]),
    ...(chart.spread === null ? [] : heads(names.spread)),
    'signal',
  ].join(',');
  return [head, ...rows, ''].join('\r\n');
}
