import { expectedLabels, limitsLabels, partnerLabels, stopLabels } from '@/lib/text/strip-labels';
import { dotHeight, type Drawing, type Shapes } from './large-drawing';
import { placeLabels, type LabelWish } from './place-labels';
import { about } from './stretch';
import { partnerStretch } from './strip-data';
import { touchPx } from './strip-metrics';
import type { StripRole } from './strip-role';

/** The words over the strip; a second label moves or goes before it overlaps. */
export function labelShapes(drawing: Drawing): Shapes {
  const { stack, metrics, widthPx, labelBaseline } = drawing;
  const tall = stack.dots
    .filter(({ level }) => dotHeight(drawing, level) - metrics.lastDotR < labelBaseline + 2)
    .filter(({ x }) => !stack.more.some((more) => Math.abs(more.x - x) < metrics.lastDotR))
    .map(({ x }) => about(x, 2 * metrics.lastDotR));
  const lane = { widthPx, sizePx: metrics.labelPx, gapPx: 12, taken: tall };
  return placeLabels(labelWishes(drawing), lane).map(({ role, text, x }) => ({
    kind: 'text',
    role,
    x,
    y: labelBaseline,
    anchor: 'middle',
    text,
  }));
}

function labelWishes({ data, scale, stack, widthPx }: Drawing): LabelWish<StripRole>[] {
  const wishes: LabelWish<StripRole>[] = stack.more.map(({ x, count }) => ({
    role: 'more',
    texts: [`+${count}`],
    over: about(x, 2 * touchPx),
  }));
  const wish = (role: StripRole, texts: readonly string[], fromPm: number, toPm: number) => {
    const from = Math.max(0, scale.xOf(fromPm));
    const to = Math.min(widthPx, scale.xOf(toPm));
    if (to >= from) wishes.push({ role, texts, over: { from, to } });
  };
  const { lowerPm, upperPm, expected, stopAt } = data;
  if (stopAt) wish('label', stopLabels(stopAt.valuePm, data), stopAt.valuePm, stopAt.valuePm);
  if (expected) {
    const { valuePm, expandedPm } = expected;
    wish('labelLive', expectedLabels, valuePm - expandedPm, valuePm + expandedPm);
  } else if (!stopAt && (lowerPm ?? upperPm) !== null) {
    const { fromPm, toPm } = scale.span;
    wish('label', limitsLabels(data), lowerPm ?? fromPm, upperPm ?? toPm);
  }
  const size = data.size ?? null;
  if (size?.label !== undefined) {
    const { valuePm, expandedPm, label } = size;
    wish('label', [label], valuePm - expandedPm, valuePm + expandedPm);
  }
  const partner = partnerStretch(data.partner);
  if (partner !== null) {
    wish('label', partnerLabels(data.partner!, data), partner.fromPm, partner.toPm);
  }
  return wishes;
}
