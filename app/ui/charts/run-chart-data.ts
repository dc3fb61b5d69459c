import type { OddPiece } from '@/lib/rules/odd-pieces';
import type { RunView } from '@/lib/rules/run-view';
import { zoneRun } from '@/lib/rules/zone-run';
import { chartStepPm } from '@/lib/text/chart-step';
import { eventWords } from '@/lib/text/event-words';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { turnMark } from '@/lib/text/turn-mark';
import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { axisTurns, type AxisTurns } from './axis-turns';

/** Everything a run chart shows, as plain figures; heights in steps from the nominal. */
export type RunChartData = {
  /** "from 12.000, in 0.001 mm" */
  heightTitle: string;
  points: {
    ordinal: number;
    mark: string;
    height: number;
    /** Half-length of its bar: the expanded uncertainty. */
    doubt: number;
    earlier: boolean;
    last: boolean;
    /** Off the line, and nobody has said yet that it is right. */
    odd: boolean;
    /** "W11 11.990", with the feature's name where a piece has several turns. */
    label: string;
    /** The same without that name. */
    shortLabel: string;
  }[];
  /** Set aside: shown, and part of no figure and of no scale. */
  aside: { ordinal: number; mark: string; height: number }[];
  decimal: Shown['decimal'];
  lower: { height: number; label: string } | null;
  upper: { height: number; label: string } | null;
  /** The middle of both limits; null where one is missing. */
  aim: { height: number; label: string } | null;
  /** By zones: a quarter of the tolerance inside each limit. */
  quarters: { low: number; high: number } | null;
  /** The line and its 95 % band of single pieces at whole and half ordinals; null without a drift. */
  line: { ordinal: number; height: number; low: number; high: number }[] | null;
  /** From here on the line is a forecast: it is dashed. */
  lastMade: number;
  /** The last piece of the batch. */
  batchEnd: number;
  turns: AxisTurns;
  /** Where the drift meets a limit: turns from the first likely to the last, which may lie beyond the plot. */
  crossing: {
    side: 'lower' | 'upper';
    height: number;
    first: number;
    best: number;
    last: number;
    /** "meets the limit, W15 to W17" */
    words: string;
    /** The same where it stands away from that limit: "meets the upper limit, …". */
    apart: string;
  } | null;
  events: { ordinal: number; title: string; note: string }[];
  /** Act after this piece; null when nothing has to be done. */
  actAfter: number | null;
};

/** What the chart of a run shows. Pure; no point is made up, gaps in the pieces stay gaps. */
export function runChartData(
  view: RunView,
  shown: Shown,
  odd: readonly OddPiece[] = [],
): RunChartData {
  const isOdd = new Set(odd.filter(({ saidRight }) => !saidRight).map((one) => one.point.ordinal));
  const stepPm = chartStepPm[shown.unit];
  const { nominalPm } = view;
  const several = view.features.length > 1;
  const decimals = decimalsForResolution(stepPm, shown.unit);
  const nominal = formatLength(nominalPm, { ...shown, decimals });
  const step = formatLength(stepPm, { ...shown, decimals });
  const heightOf = (pm: number) => (pm - nominalPm) / stepPm;
  const mmToSteps = (mm: number) => (mm * 1e9) / stepPm;
  const limit = (pm: number | null) =>
    pm === null
      ? null
      : { height: heightOf(pm), label: formatLength(Math.round(pm), { ...shown, decimals, sign }) };
  const sign = several ? ('always' as const) : ('needed' as const);

  const lastMade = view.points.at(-1)?.ordinal ?? 0;
  const batchEnd = view.pieces.at(-1)?.ordinal ?? Math.max(1, lastMade);
  const figure = (pm: number) => shownLength(pm, stepPm, shown, sign);
  const points = view.points.map(({ ordinal, mark, piece, valuePm, size, earlier }) => ({
    ordinal,
    mark,
    height: heightOf(valuePm),
    doubt: size.expandedPm / stepPm,
    earlier,
    last: ordinal === lastMade,
    odd: isOdd.has(ordinal),
    label: `${mark} ${figure(valuePm)}`,
    shortLabel: `${piece.mark} ${figure(valuePm)}`,
  }));

  const drift = view.drift?.kind === 'line' ? view.drift : null;
  const ahead = drift?.ahead.kind === 'meets' ? drift.ahead : null;
  const crossing =
    ahead === null
      ? null
      : {
          side: ahead.side,
          height: mmToSteps(ahead.limitMm),
          first: ahead.crossing.first,
          best: ahead.crossing.best,
          last: ahead.crossing.last,
          words: meetsWords(view, ahead.crossing, 'limit'),
          apart: meetsWords(view, ahead.crossing, `${ahead.side} limit`),
        };
  const lineEnd = Math.max(batchEnd, Math.min(crossing?.last ?? 0, batchEnd * 2)) + 1;
  const first = drift === null ? 0 : view.points[drift.firstIndex]!.ordinal;
  const line =
    drift === null
      ? null
      : halves(first - 0.4, lineEnd, [lastMade]).map((ordinal) => {
          const at = drift.bandAtMm(ordinal);
          return {
            ordinal,
            height: mmToSteps(at.line),
            low: mmToSteps(at.newReading.low),
            high: mmToSteps(at.newReading.high),
          };
        });
  return {
    heightTitle: `from ${several ? 'own nominal' : nominal}, in ${step} ${shown.unit === 'mm' ? 'mm' : 'inch'}`,
    points,
    aside: view.aside.map(({ ordinal, mark, valuePm }) => ({
      ordinal,
      mark,
      height: heightOf(valuePm),
    })),
    decimal: shown.decimal,
    lower: limit(view.limits.lowerPm),
    upper: limit(view.limits.upperPm),
    ...aimOf(view, limit),
    line,
    lastMade,
    batchEnd,
    turns: axisTurns(view),
    crossing: crossing !== null && crossing.first < lineEnd ? crossing : null,
    events: view.events.map((event) => ({
      ordinal: event.afterOrdinal + 0.5,
      ...eventWords(event, shown),
    })),
    // By zones, the zones alone say when to act.
    actAfter: view.run.zones && zoneRun(view) !== null ? null : view.actAfter,
  };
}

/** What is aimed at, and by zones the stretch that is as good as it. */
function aimOf(
  { limits: { lowerPm, upperPm }, run }: RunView,
  at: (pm: number) => RunChartData['aim'],
): Pick<RunChartData, 'aim' | 'quarters'> {
  if (lowerPm === null || upperPm === null) return { aim: null, quarters: null };
  const quarterPm = (upperPm - lowerPm) / 4;
  return {
    aim: at((lowerPm + upperPm) / 2),
    quarters: run.zones
      ? { low: at(lowerPm + quarterPm)!.height, high: at(upperPm - quarterPm)!.height }
      : null,
  };
}

function meetsWords(
  view: RunView,
  { first, last }: { first: number; last: number },
  limit: string,
): string {
  const markAt = (ordinal: number) => turnMark(view.pieces, ordinal);
  const [from, to] = [Math.floor(first) + 1, Math.ceil(last)];
  return from >= to
    ? `meets the ${limit} at ${markAt(to)}`
    : `meets the ${limit}, ${markAt(from)} to ${markAt(to)}`;
}

/** Every half ordinal from one end to the other, the ends and the extra ones among them. */
function halves(from: number, to: number, extra: readonly number[]): number[] {
  const found = new Set([from, to, ...extra.filter((x) => x > from && x < to)]);
  for (let x = Math.ceil(from * 2) / 2; x < to; x += 0.5) found.add(x);
  return [...found].sort((a, b) => a - b);
}
