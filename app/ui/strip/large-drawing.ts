import type { Shape } from './shape';
import { stackDots, type Stack } from './stack-dots';
import type { StripData } from './strip-data';
import {
  largeMetrics,
  offPlate,
  tickLengths,
  type LargeMetrics,
  type LargeSize,
} from './strip-metrics';
import { offStrip, type OffBothEnds } from './strip-off';
import type { StripRole } from './strip-role';
import { stripScale, type StripScale } from './strip-scale';
import type { Stretch } from './stretch';

export type Shapes = Shape<StripRole>[];

/** What every part of a large strip is drawn from: the data, the scale and the heights of the lanes. */
export type Drawing = {
  data: StripData;
  metrics: LargeMetrics;
  scale: StripScale;
  off: OffBothEnds;
  /** Readings on the strip, as dots. */
  stack: Stack;
  /** The part of the baseline that is to scale: between the breaks. */
  scaled: Stretch;
  widthPx: number;
  bandTop: number;
  bandMiddle: number;
  baseline: number;
  labelBaseline: number;
  numeralBaseline: number;
};

export function largeDrawing(data: StripData, size: LargeSize, widthPx: number): Drawing {
  const metrics = largeMetrics[size];
  const scale = stripScale(data, widthPx, metrics.numeralPx);
  const off = offStrip(data, scale.span);
  const onStrip = (data.readings ?? []).filter(({ valuePm }) => scale.holds(valuePm));
  const bandTop = metrics.labelLane + metrics.dotLane;
  const baseline = bandTop + metrics.bandLane;
  const pastBreak = offPlate.breakAt + offPlate.breakWidth / 2;
  return {
    data,
    metrics,
    scale,
    off,
    stack: stackDots(onStrip, scale.xOf, 2 * metrics.dotR + 1),
    scaled: {
      from: off.left === null ? 0 : pastBreak,
      to: off.right === null ? widthPx : widthPx - pastBreak,
    },
    widthPx,
    bandTop,
    bandMiddle: bandTop + metrics.bandLane / 2,
    baseline,
    labelBaseline: Math.round(metrics.labelPx * 0.88),
    numeralBaseline: baseline + tickLengths.major + metrics.numeralPx,
  };
}

/** Height of the middle of a dot. */
export function dotHeight({ bandTop, metrics }: Drawing, level: number): number {
  return bandTop - metrics.dotRise - level * metrics.dotPitch;
}
