import type { Drawing } from '../save/drawing';
import { controlHeightRange } from './control-chart-config';
import type { ControlPlotData } from './control-chart-data';

/** One plot of a control chart as plain shapes: what is joined, its limits where they hold, its signals, events. */
export function controlDrawing(data: ControlPlotData): Drawing {
  const { lines, limits, ends, events } = data;
  const limit = (name: 'lower' | 'centre' | 'upper', width: number, dash: string) =>
    limits.map((stretch) => ({
      at: stretch.map((at) => ({ ordinal: at.ordinal, height: at[name] })),
      width,
      dash,
    }));
  return {
    heightTitle: data.heightTitle,
    along: { min: 0.4, max: data.turns.end + 0.6 },
    up: controlHeightRange(data),
    turns: data.turns,
    words: [],
    finest: 0.1,
    decimal: data.decimal,
    hatched: null,
    lines: [
      ...lines.map((at) => ({ at, width: 1 })),
      ...limit('upper', 2, '8 5'),
      ...limit('centre', 1.25, '14 4 3 4'),
      ...limit('lower', 2, '8 5'),
    ],
    bars: [],
    points: lines.flat().map(({ ordinal, height, signal }) => ({
      ordinal,
      height,
      shape: signal ? 'diamond' : 'dot',
    })),
    across: [],
    ends: ends.map(({ height, name, label }) => ({ height, name: `${name} ${label}` })),
    events: events.map(({ ordinal, title }) => ({ ordinal, title })),
  };
}
