import type { CloserChartData } from '../charts/closer-chart-data';
import type { Drawing } from '../save/drawing';
import { drawingSvg } from '../save/drawing-svg';

/** The stretch as a drawing of its own; of many pieces a line through the extremes, and each one outside. */
export function seriesSvg(data: CloserChartData, title: string): string {
  const { window: seen, range, points, dense, gap, lower, upper } = data;
  const lines: CloserChartData['points'][] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before === undefined || point.ordinal - before.ordinal > gap) lines.push([]);
    lines.at(-1)!.push(point);
  });
  const limits = [
    { limit: upper, name: 'Upper' },
    { limit: lower, name: 'Lower' },
  ];
  const drawing: Drawing = {
    heightTitle: data.heightTitle,
    along: { min: seen.from, max: seen.to },
    up: range,
    turns: null,
    words: [],
    hatched: null,
    finest: 1,
    decimal: '.',
    lines: dense ? lines.map((at) => ({ at, width: 1 })) : [],
    bars: [],
    points: points
      .filter(({ outside }) => outside || !dense)
      .map(({ ordinal, height, outside }) => ({
        ordinal,
        height,
        shape: outside ? 'diamond' : 'dot',
      })),
    across: limits.flatMap(({ limit, name }) =>
      limit === null ? [] : [{ height: limit.height, width: 2.5, name: `${name} ${limit.label}` }],
    ),
    ends: [],
    events: data.events,
  };
  return drawingSvg([drawing], title);
}
