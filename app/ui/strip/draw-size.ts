import { dotHeight, type Drawing, type Shapes } from './large-drawing';
import { about, clipped } from './stretch';

/** The size and the bar it is known within. Unsure is hollow, out is solid; both are warm. */
export function sizeShapes(drawing: Drawing): Shapes {
  const { data, scale, metrics, bandTop, bandMiddle, baseline } = drawing;
  const size = data.size ?? null;
  if (size === null || !scale.holds(size.valuePm)) return [];
  const isUnsure = size.state === 'unsure';
  const isOut = size.state === 'out';
  const height = isUnsure ? metrics.unsureHeight : metrics.barHeight;
  return [
    {
      kind: 'rect',
      role: isUnsure ? 'barUnsure' : isOut ? 'barOut' : 'bar',
      ...barStretch(drawing, size),
      y: bandMiddle - height / 2,
      height,
    },
    {
      kind: 'rect',
      role: isUnsure ? 'markUnsure' : isOut ? 'markOut' : 'mark',
      x: scale.xOf(size.valuePm) - metrics.markWidth / 2,
      y: bandTop - 3,
      width: metrics.markWidth,
      height: baseline - bandTop + 3,
    },
  ];
}

/** Where the next cut is expected to end, and where turning stops. */
export function expectedShapes(drawing: Drawing): Shapes {
  const { data, scale, metrics, bandTop, bandMiddle, baseline, labelBaseline } = drawing;
  const shapes: Shapes = [];
  if (data.stopAt && scale.holds(data.stopAt.valuePm)) {
    const x = scale.xOf(data.stopAt.valuePm);
    shapes.push({
      kind: 'line',
      role: 'stopLine',
      x1: x,
      y1: labelBaseline + 5,
      x2: x,
      y2: baseline,
    });
  }
  if (data.expected && scale.holds(data.expected.valuePm)) {
    const x = scale.xOf(data.expected.valuePm);
    const height = metrics.expectedHeight;
    shapes.push(
      {
        kind: 'rect',
        role: 'expected',
        ...barStretch(drawing, data.expected),
        y: bandMiddle - height / 2,
        height,
      },
      { kind: 'line', role: 'expectedMark', x1: x, y1: bandTop - 3, x2: x, y2: baseline },
    );
  }
  return shapes;
}

/** Readings as dots; a held one is ringed, a struck one lined through. */
export function readingShapes(drawing: Drawing): Shapes {
  return drawing.stack.dots.flatMap((dot) => dotShapes(drawing, dot));
}

function dotShapes(
  drawing: Drawing,
  { reading, x, level }: Drawing['stack']['dots'][number],
): Shapes {
  const { metrics } = drawing;
  const cy = dotHeight(drawing, level);
  const r = metrics.dotR;
  switch (reading.state) {
    case 'held':
      return [{ kind: 'circle', role: 'dotHeld', cx: x, cy, r: metrics.lastDotR }];
    case 'struck':
      return [
        { kind: 'circle', role: 'dotStruck', cx: x, cy, r },
        { kind: 'line', role: 'dotStruckLine', x1: x - r - 2, y1: cy, x2: x + r + 2, y2: cy },
      ];
    case 'counted':
      return reading.last === true
        ? [{ kind: 'circle', role: 'dotLast', cx: x, cy, r: metrics.lastDotR }]
        : [{ kind: 'circle', role: 'dot', cx: x, cy, r }];
  }
}

function barStretch(
  { scale, metrics, widthPx }: Drawing,
  { valuePm, expandedPm }: { valuePm: number; expandedPm: number },
) {
  const half = Math.max(expandedPm * scale.pxPerPm, metrics.barLeastHalf);
  const { from, to } = clipped(about(scale.xOf(valuePm), 2 * half), widthPx)!;
  return { x: from, width: to - from };
}
