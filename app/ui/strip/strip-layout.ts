import { baselineShapes, numeralShapes, plateShapes, tickShapes } from './draw-axis';
import { bandShapes, notchShapes, postShapes, quarterShapes } from './draw-band';
import { labelShapes } from './draw-labels';
import { expectedShapes, readingShapes, sizeShapes } from './draw-size';
import { largeDrawing } from './large-drawing';
import type { Shape } from './shape';
import { smallStripLayout } from './small-strip-layout';
import type { SpanPm, StripData } from './strip-data';
import type { StripSizeName } from './strip-metrics';
import type { StripRole } from './strip-role';
import type { TickLadder } from './tick-ladder';

export type StripLayout = {
  widthPx: number;
  heightPx: number;
  /** In the order they are drawn: later ones lie over earlier ones. */
  shapes: Shape<StripRole>[];
  /** Both ends of the scale, pm. */
  span: SpanPm;
  /** Null on the small forms, which have no ticks. */
  ladder: TickLadder | null;
};

/**
 * A size strip as geometry: everything drawn, in px, with what it means.
 *
 * The same data, size and width give the same picture; nothing is measured on a screen. The scale comes from
 * `data.spanPm`, or from the limits, the partner and the notch, so no new reading moves it. Least width of the
 * large forms: 296 px.
 */
export function stripLayout(data: StripData, size: StripSizeName, widthPx: number): StripLayout {
  if (size === 'small' || size === 'card') return smallStripLayout(data, size, widthPx);
  const drawing = largeDrawing(data, size, widthPx);
  return {
    widthPx,
    heightPx: drawing.metrics.height,
    span: drawing.scale.span,
    ladder: drawing.scale.ladder,
    shapes: [
      ...bandShapes(drawing),
      ...tickShapes(drawing),
      ...baselineShapes(drawing),
      ...quarterShapes(drawing),
      ...postShapes(drawing),
      ...notchShapes(drawing),
      ...expectedShapes(drawing),
      ...sizeShapes(drawing),
      ...readingShapes(drawing),
      ...labelShapes(drawing),
      ...plateShapes(drawing),
      ...numeralShapes(drawing),
    ],
  };
}
