import type { ControlChart } from '@/lib/rules/control-view';
import type { ControlPoint } from '@/lib/rules/control-tracks';
import type { RunView } from '@/lib/rules/run-view';
import { trackNames } from '@/lib/text/control-words';
import { eventWords } from '@/lib/text/event-words';
import type { Shown } from '@/lib/text/shown-size';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { chartStepPm } from '@/lib/text/chart-step';
import { axisTurns, type AxisTurns } from './axis-turns';

/** One plot of a control chart, as plain figures; heights in steps of the run chart. */
export type ControlPlotData = {
  /** "single pieces, from 12.000, in 0.001 mm" */
  heightTitle: string;
  /** What is joined: one list a stretch between events, and for sums one for each side. */
  lines: { ordinal: number; height: number; mark: string; signal: boolean }[][];
  /** The limits where they hold, one list a stretch; half a turn beyond its first and last point. */
  limits: { ordinal: number; lower: number; centre: number; upper: number }[][];
  /** Named at the right end by the last of them. */
  ends: { height: number; name: string; label: string }[];
  events: { ordinal: number; title: string; note: string }[];
  turns: AxisTurns;
  decimal: Shown['decimal'];
};

/** What the plots of a control chart show: the main one, and the scatter under it where there is one. */
export function controlChartData(
  view: RunView,
  chart: ControlChart,
  shown: Shown,
): { main: ControlPlotData; spread: ControlPlotData | null } {
  const names = trackNames(chart.control, chart.grouped);
  const isSum = chart.control === 'cusum';
  const signals = (track: 'main' | 'spread') =>
    new Set(
      chart.signals
        .filter((signal) => signal.track === track)
        .map(({ ordinal, side }) => (isSum ? `${ordinal} ${side}` : String(ordinal))),
    );
  const own = signals('main');
  const main = chart.main.map((point) => ({
    point,
    signal: own.has(isSum ? `${point.ordinal} above` : String(point.ordinal)),
  }));
  const low = (chart.low ?? []).map((point) => ({
    point,
    signal: own.has(`${point.ordinal} below`),
  }));
  const spreadSignals = signals('spread');
  return {
    main: plotOf(view, shown, names.main, [main, low], !isSum),
    spread:
      chart.spread === null
        ? null
        : plotOf(
            view,
            shown,
            names.spread,
            [
              chart.spread.map((point) => ({
                point,
                signal: spreadSignals.has(String(point.ordinal)),
              })),
            ],
            false,
          ),
  };
}

type Marked = { point: ControlPoint; signal: boolean };

function plotOf(
  view: RunView,
  shown: Shown,
  name: string,
  tracks: readonly (readonly Marked[])[],
  isSize: boolean,
): ControlPlotData {
  const stepPm = chartStepPm[shown.unit];
  const decimals = decimalsForResolution(stepPm, shown.unit);
  const heightOf = (mm: number) => (mm * 1e9) / stepPm;
  const asLength = (mm: number) =>
    formatLength(Math.round(mm * 1e9) + (isSize ? view.nominalPm : 0), {
      ...shown,
      decimals: decimals + 1,
      ...(isSize && view.features.length > 1 ? { sign: 'always' as const } : {}),
    });
  const unit = shown.unit === 'mm' ? 'mm' : 'inch';
  const step = formatLength(stepPm, { ...shown, decimals });
  const nominal =
    view.features.length > 1 ? 'own nominal' : formatLength(view.nominalPm, { ...shown, decimals });
  const last = tracks[0]!.at(-1)?.point;
  return {
    heightTitle: isSize
      ? `${name}, from ${nominal}, in ${step} ${unit}`
      : `${name}, in ${step} ${unit}`,
    lines: tracks.flatMap((track) =>
      byStretch(track, ({ point }) => point.stretch).map((own) =>
        own.map(({ point, signal }) => ({
          ordinal: point.ordinal,
          height: heightOf(point.valueMm),
          mark: point.mark,
          signal,
        })),
      ),
    ),
    limits: byStretch(tracks[0]!, ({ point }) => point.stretch).map((own) =>
      limitsAlong(
        own.map(({ point }) => point),
        heightOf,
      ),
    ),
    ends:
      last === undefined
        ? []
        : [
            { mm: last.upperMm, name: 'Upper' },
            { mm: last.centreMm, name: 'Middle' },
            { mm: last.lowerMm, name: 'Lower' },
          ].map(({ mm, name: end }) => ({ height: heightOf(mm), name: end, label: asLength(mm) })),
    events: view.events.map((event) => ({
      ordinal: event.afterOrdinal + 0.5,
      ...eventWords(event, shown),
    })),
    turns: axisTurns(view),
    decimal: shown.decimal,
  };
}

function byStretch<T>(list: readonly T[], stretchOf: (item: T) => number): T[][] {
  const made: T[][] = [];
  list.forEach((item, i) => {
    if (i === 0 || stretchOf(item) !== stretchOf(list[i - 1]!)) made.push([]);
    made.at(-1)!.push(item);
  });
  return made;
}

/** The limits at each point, carried half a turn beyond both ends. */
function limitsAlong(
  points: readonly ControlPoint[],
  heightOf: (mm: number) => number,
): ControlPlotData['limits'][number] {
  const at = (point: ControlPoint, by: number) => ({
    ordinal: point.ordinal + by,
    lower: heightOf(point.lowerMm),
    centre: heightOf(point.centreMm),
    upper: heightOf(point.upperMm),
  });
  const first = points[0]!;
  return [at(first, -0.5), ...points.map((point) => at(point, 0)), at(points.at(-1)!, 0.5)];
}
