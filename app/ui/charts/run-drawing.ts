import type { Drawing } from '../save/drawing';
import { heightRange } from './run-chart-config';
import type { RunChartData } from './run-chart-data';

/** A run chart as plain shapes: pieces with their bars, limits, aim, drift line and band, events, the crossing. */
export function runDrawing(data: RunChartData): Drawing {
  const { points, aside, line, lastMade, turns, lower, upper, aim, quarters, crossing } = data;
  const along = { min: 0.4, max: turns.end + (line === null ? 0.6 : 1.6) };
  const of = (name: 'height' | 'low' | 'high') =>
    (line ?? []).map((at) => ({ ordinal: at.ordinal, height: at[name] }));
  const named = [
    { at: upper, name: 'Upper', width: 2.5 },
    { at: aim, name: 'Aim', width: 1, dash: '10 4 2 4' },
    { at: lower, name: 'Lower', width: 2.5 },
  ];
  return {
    heightTitle: data.heightTitle,
    along,
    up: heightRange(data),
    turns: data.turns,
    words:
      crossing === null
        ? []
        : [
            {
              ordinal: crossing.first,
              height: crossing.height,
              text: crossing.words,
              free: crossing.side === 'upper' ? 'over' : 'under',
            },
          ],
    finest: 1,
    decimal: data.decimal,
    hatched: line === null ? null : [...of('high'), ...of('low').toReversed()],
    lines: [
      { at: of('height').filter(({ ordinal }) => ordinal <= lastMade), width: 2.5 },
      { at: of('height').filter(({ ordinal }) => ordinal >= lastMade), width: 2.5, dash: '9 6' },
      { at: of('low'), width: 1 },
      { at: of('high'), width: 1 },
      ...(crossing === null
        ? []
        : [
            {
              at: [crossing.first, crossing.last].map((ordinal) => ({
                ordinal,
                height: crossing.height,
              })),
              width: 6,
            },
          ]),
    ].filter(({ at }) => at.length > 1),
    bars: points.map(({ ordinal, height, doubt }) => ({
      ordinal,
      low: height - doubt,
      high: height + doubt,
    })),
    points: [
      ...points.map(({ ordinal, height, earlier, odd }) => ({
        ordinal,
        height,
        shape: odd ? ('ringed' as const) : earlier ? ('hollow' as const) : ('dot' as const),
      })),
      ...aside.map(({ ordinal, height }) => ({ ordinal, height, shape: 'struck' as const })),
    ],
    across: [
      ...named.flatMap(({ at, name, width, dash = '' }) =>
        at === null ? [] : [{ height: at.height, width, dash, name: `${name} ${at.label}` }],
      ),
      ...(quarters === null ? [] : [quarters.low, quarters.high]).map((height) => ({
        height,
        width: 1,
        dash: '2 4',
        name: '',
      })),
    ],
    ends: [],
    events: [
      ...data.events.map(({ ordinal, title }) => ({ ordinal, title })),
      ...(data.actAfter === null ? [] : [{ ordinal: data.actAfter + 0.5, title: 'Act here' }]),
    ],
  };
}
