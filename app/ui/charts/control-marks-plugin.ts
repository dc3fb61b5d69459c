import type { Plugin } from 'chart.js';
import { penOf, stroke, write, type Pen } from './chart-pen';
import type { ControlPlotData } from './control-chart-data';
import { drawAxes } from './draw-axes';
import type { Palette } from './palette';

/** Draws what chart.js has no word for on a control chart: axes, events, the limits named at their end. */
export function controlMarksPlugin(data: ControlPlotData, palette: Palette): Plugin<'scatter'> {
  return {
    id: 'control-marks',
    beforeDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      for (const { ordinal } of data.events) {
        const px = pen.x(ordinal);
        stroke(
          pen,
          palette.rule,
          1.25,
          [
            [px, pen.area.top],
            [px, pen.area.bottom],
          ],
          [2, 4],
        );
      }
    },
    afterDatasetsDraw(chart) {
      const pen = penOf(chart, palette);
      drawAxes(pen, { turns: data.turns, finest: 0.1, decimal: data.decimal });
      nameLimits(pen, data);
    },
  };
}

/** Where two names would touch, the middle one is left out. */
function nameLimits(pen: Pen, { ends }: ControlPlotData): void {
  const { area, palette } = pen;
  const least = 30;
  const [upper, middle, lower] = ends;
  const isClear =
    upper === undefined || middle === undefined || lower === undefined
      ? true
      : pen.y(middle.height) - pen.y(upper.height) > least &&
        pen.y(lower.height) - pen.y(middle.height) > least;
  for (const { height, name, label } of ends) {
    if (name === 'Middle' && !isClear) continue;
    const py = pen.y(height);
    const at = area.right + 8;
    write(pen, name, [at, py - 7], { colour: palette.ink, font: '12px' });
    write(pen, label, [at, py + 8], { colour: palette.ink, font: '700 12px' });
  }
}
