import type { Shape } from './shape';
import { about, clipped, type Stretch } from './stretch';
import { partnerStretch, type SpanPm, type StripData } from './strip-data';
import type { StripLayout } from './strip-layout';
import { smallMetrics, type SmallMetrics, type SmallSize } from './strip-metrics';
import { offStrip, type OffBothEnds } from './strip-off';
import type { StripRole } from './strip-role';
import { assumedBand, type SpanFacts } from './strip-span';

/**
 * The strip of boards, lists and cards: band, posts, partner, notch, mark, plate; no ticks, figures, dots or guard.
 *
 * Its span is `data.spanPm` (one for a whole column), or the limits and half a band at each side.
 */
export function smallStripLayout(data: StripData, size: SmallSize, widthPx: number): StripLayout {
  const metrics = smallMetrics[size];
  const span = data.spanPm ?? columnSpan([data]);
  const pxPerPm = widthPx / (span.toPm - span.fromPm);
  const drawing: SmallDrawing = {
    data,
    metrics,
    span,
    widthPx,
    pxPerPm,
    xOf: (pm) => (pm - span.fromPm) * pxPerPm,
    holds: (pm) => pm >= span.fromPm && pm <= span.toPm,
    off: offStrip({ ...data, readings: [] }, span),
  };
  return {
    widthPx,
    heightPx: metrics.height,
    span,
    ladder: null,
    shapes: [
      ...groundShapes(drawing),
      ...notchShapes(drawing),
      ...sizeShapes(drawing),
      ...plateShapes(drawing),
    ],
  };
}

/**
 * One span for a column of small strips, pm: all their limits and half the widest band at each side. A size without
 * limits stands in the middle.
 */
export function columnSpan(rows: readonly (SpanFacts & Pick<StripData, 'size'>)[]): SpanPm {
  const bands = rows.map(({ size, ...row }) =>
    assumedBand(row, { sizesPm: size ? [size.valuePm] : [] }),
  );
  const halfPm = Math.max(...bands.map(({ fromPm, toPm }) => toPm - fromPm)) / 2;
  return {
    fromPm: Math.min(...bands.map(({ fromPm }) => fromPm)) - halfPm,
    toPm: Math.max(...bands.map(({ toPm }) => toPm)) + halfPm,
  };
}

type Shapes = Shape<StripRole>[];

type SmallDrawing = {
  data: StripData;
  metrics: SmallMetrics;
  span: SpanPm;
  widthPx: number;
  pxPerPm: number;
  xOf: (pm: number) => number;
  holds: (pm: number) => boolean;
  off: OffBothEnds;
};

function groundShapes({ data, metrics, span, widthPx, xOf, holds }: SmallDrawing): Shapes {
  const { lowerPm, upperPm } = data;
  const { bandTop, baseline } = metrics;
  const block = (role: StripRole, fromPm: number, toPm: number, y: number, height: number) => {
    const stretch: Stretch | null = clipped({ from: xOf(fromPm), to: xOf(toPm) }, widthPx);
    if (stretch === null) return [];
    const { from: x, to } = stretch;
    return [{ kind: 'rect' as const, role, x, y, width: to - x, height }];
  };
  const partner = partnerStretch(data.partner);
  const posts = [lowerPm, upperPm].filter((pm) => pm !== null && holds(pm)) as number[];
  return [
    ...((lowerPm ?? upperPm) === null
      ? []
      : block('band', lowerPm ?? span.fromPm, upperPm ?? span.toPm, bandTop, baseline - bandTop)),
    { kind: 'line', role: 'baseline', x1: 0, y1: baseline, x2: widthPx, y2: baseline },
    ...(partner === null ? [] : block('partner', partner.fromPm, partner.toPm, bandTop - 3.5, 3)),
    ...posts.map((pm) => {
      const x = xOf(pm);
      return {
        kind: 'line' as const,
        role: 'post' as const,
        x1: x,
        y1: bandTop - 1,
        x2: x,
        y2: baseline + 2.5,
      };
    }),
  ];
}

function notchShapes({ data, metrics, xOf, holds }: SmallDrawing): Shapes {
  const aimPm = data.aimPm ?? null;
  if (aimPm === null || !holds(aimPm)) return [];
  const x = xOf(aimPm);
  const { from, to } = about(x, metrics.notch.width);
  const d = `M${from} ${metrics.baseline}L${x} ${metrics.baseline - metrics.notch.height}L${to} ${metrics.baseline}Z`;
  return [{ kind: 'path', role: data.live === true ? 'notchLive' : 'notch', d }];
}

function sizeShapes({ data, metrics, widthPx, pxPerPm, xOf, holds }: SmallDrawing): Shapes {
  const size = data.size ?? null;
  if (size === null || !holds(size.valuePm)) return [];
  const x = xOf(size.valuePm);
  const isUnsure = size.state === 'unsure';
  const isOut = size.state === 'out';
  const height = isUnsure ? 5 : 3;
  const middle = (metrics.bandTop + metrics.baseline) / 2;
  const { from, to } = clipped(about(x, Math.max(2 * size.expandedPm * pxPerPm, 5)), widthPx)!;
  return [
    {
      kind: 'rect',
      role: isUnsure ? 'barUnsure' : isOut ? 'barOut' : 'bar',
      x: from,
      y: middle - height / 2,
      width: to - from,
      height,
    },
    {
      kind: 'rect',
      role: isUnsure ? 'markUnsure' : isOut ? 'markOut' : 'mark',
      x: x - 1.25,
      y: metrics.bandTop - 2,
      width: 2.5,
      height: metrics.baseline - metrics.bandTop + 4,
    },
  ];
}

function plateShapes({ metrics, widthPx, off }: SmallDrawing): Shapes {
  const { plate, bandTop, baseline } = metrics;
  const middle = (bandTop + baseline) / 2;
  const shapes: Shapes = [];
  for (const [item, end, inward] of [
    [off.left, 0, 1],
    [off.right, widthPx, -1],
  ] as const) {
    if (item === null) continue;
    const flat = end + inward * plate;
    const at = flat + inward * 4;
    shapes.push(
      {
        kind: 'path',
        role: 'break',
        d: `M${at - 3} ${baseline + 1.5}L${at - 1} ${baseline - 2.5}L${at + 1} ${baseline + 1.5}L${at + 3} ${baseline - 2.5}`,
      },
      {
        kind: 'path',
        role: item.stock ? 'plateLive' : 'plate',
        d: `M${flat} ${middle - plate / 2}L${end} ${middle}L${flat} ${middle + plate / 2}Z`,
      },
    );
  }
  return shapes;
}
