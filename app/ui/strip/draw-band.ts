import type { Drawing, Shapes } from './large-drawing';
import { about, clipped, merged, type Stretch } from './stretch';
import { partnerStretch } from './strip-data';
import { notch } from './strip-metrics';
import type { StripRole } from './strip-role';

/** What lies under everything: the band between the limits, the guard about each, the partner. */
export function bandShapes({ data, scale, widthPx, bandTop, metrics }: Drawing): Shapes {
  const { lowerPm, upperPm, guardPm = 0 } = data;
  const height = metrics.bandLane;
  const block = (role: StripRole, stretch: Stretch | null): Shapes =>
    stretch === null
      ? []
      : [
          {
            kind: 'rect',
            role,
            x: stretch.from,
            y: bandTop,
            width: stretch.to - stretch.from,
            height,
          },
        ];
  const across = (fromPm: number, toPm: number) =>
    clipped({ from: scale.xOf(fromPm), to: scale.xOf(toPm) }, widthPx);

  const shapes: Shapes = [];
  if (lowerPm !== null || upperPm !== null) {
    shapes.push(...block('band', across(lowerPm ?? scale.span.fromPm, upperPm ?? scale.span.toPm)));
  }
  if (guardPm > 0) {
    const guards = [lowerPm, upperPm]
      .filter((pm) => pm !== null)
      .map((pm) => ({ from: pm - guardPm, to: pm + guardPm }));
    for (const { from, to } of merged(guards)) shapes.push(...block('guard', across(from, to)));
  }
  const partner = partnerStretch(data.partner);
  if (partner !== null) shapes.push(...block('partner', across(partner.fromPm, partner.toPm)));
  return shapes;
}

/** The limits themselves. */
export function postShapes({ data, scale, bandTop, baseline }: Drawing): Shapes {
  return [data.lowerPm, data.upperPm]
    .filter((pm) => pm !== null && scale.holds(pm))
    .map((pm) => {
      const x = scale.xOf(pm!);
      return { kind: 'line', role: 'post', x1: x, y1: bandTop - 6, x2: x, y2: baseline + 14 };
    });
}

/** Where the middle half of the limits begins and ends. */
export function quarterShapes({ data, scale, bandTop, baseline }: Drawing): Shapes {
  const { lowerPm, upperPm, quarters = false } = data;
  if (!quarters || lowerPm === null || upperPm === null) return [];
  return [0.25, 0.75].flatMap((part) => {
    const pm = lowerPm + part * (upperPm - lowerPm);
    if (!scale.holds(pm)) return [];
    const x = scale.xOf(pm);
    return [{ kind: 'line', role: 'quarter', x1: x, y1: bandTop, x2: x, y2: baseline } as const];
  });
}

/** The aim: a V cut up into the band from the baseline. */
export function notchShapes({ data, scale, baseline }: Drawing): Shapes {
  const aimPm = data.aimPm ?? null;
  if (aimPm === null || !scale.holds(aimPm)) return [];
  const x = scale.xOf(aimPm);
  const { from, to } = about(x, notch.width);
  const d = `M${from} ${baseline}L${x} ${baseline - notch.height}L${to} ${baseline}`;
  return [{ kind: 'path', role: data.live === true ? 'notchLive' : 'notch', d }];
}
