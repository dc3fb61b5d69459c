import { clearanceSteps } from '@/lib/text/fit-words';
import { centreEm, clearancePx, type Axis, type Shapes, type Standing } from './fit-metrics';
import type { FitRulesData, FitTie } from './fit-rules-data';
import { tieLabels, type Segment } from './tie-labels';

/** Each pair joined, with its clearance beside the line; to make is dashed. Dense ones are thin, without figures. */
export function tieShapes(
  shown: FitRulesData,
  upper: readonly Standing[],
  lower: readonly Standing[],
  area: Axis & { upperY: number; lowerY: number },
  dense = false,
): Shapes {
  const above = new Map(upper.map((piece) => [piece.mark, piece]));
  const below = new Map(lower.map((piece) => [piece.mark, piece]));
  const lineOf = ({ internal, external }: { internal: string; external: string }) => {
    const from = above.get(internal);
    const to = below.get(external);
    if (from === undefined || to === undefined) return [];
    return [{ x1: from.x, y1: area.upperY, x2: to.x, y2: area.lowerY }];
  };
  const ties = shown.ties.flatMap((tie) => lineOf(tie).map((line) => ({ tie, line })));
  const toMake = shown.toMake.flatMap(lineOf);
  if (dense) {
    return [
      ...toMake.map((line) => ({
        kind: 'line' as const,
        role: 'toMakeLineThin' as const,
        ...line,
      })),
      ...ties.map(({ tie, line }) => ({
        kind: 'line' as const,
        role: `tie${suffixOf(tie)}Thin` as const,
        ...line,
      })),
    ];
  }
  const words = [
    ...ties.map(({ tie, line }) => ({
      text: clearanceSteps(tie.clearancePm, shown, shown.stepPm),
      line,
      padPx: tie.state === 'unsure' ? 4 : 0,
    })),
    ...toMake.map((line) => ({ text: '', line, padPx: 0 })),
  ];
  const labels = tieLabels(words, { fromPx: area.fromPx, toPx: area.toPx, sizePx: clearancePx });
  return [
    ...toMake.map((line) => ({ kind: 'line' as const, role: 'toMakeLine' as const, ...line })),
    ...ties.flatMap(({ tie, line }, index) => tieShape(tie, line, labels[index]!)),
  ];
}

function suffixOf({ state }: FitTie): '' | 'Out' | 'Unsure' {
  if (state === 'unsure') return 'Unsure';
  return state === 'out' || state === 'to cut' ? 'Out' : '';
}

function tieShape(tie: FitTie, line: Segment, label: ReturnType<typeof tieLabels>[number]): Shapes {
  const suffix = suffixOf(tie);
  const shapes: Shapes = [{ kind: 'line', role: `tie${suffix}`, ...line }];
  if (label === null || label.text === '') return shapes;
  const { x, y, width, height } = label.box;
  if (suffix === 'Unsure') {
    shapes.push({ kind: 'rect', role: 'unsureBox', ...label.box });
  }
  const baseline = y + height / 2 + clearancePx * centreEm;
  shapes.push({
    kind: 'text',
    role: `clearance${suffix}`,
    x: x + width / 2,
    y: baseline,
    anchor: 'middle',
    text: label.text,
  });
  return shapes;
}
