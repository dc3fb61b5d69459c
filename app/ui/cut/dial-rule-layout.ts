import { textWidth } from '../strip/text-width';

/** A strip of the handwheel, drawn from where it stands to where it is turned to. Lengths in px. */
export type DialRuleLayout = {
  /** A figure stands over its tick, or as near as it fits into the picture. */
  ticks: { x: number; kind: 'minor' | 'medium' | 'major'; label: string | null; labelX: number }[];
  standsX: number;
  turnX: number;
};

type Facts = {
  width: number;
  /** Where the dial stands and where it is turned to, in whole divisions. */
  standsAt: number;
  turnTo: number;
  /** The figure at a division. */
  label: (division: number) => string;
};

/** Px a division, as long as all of the way fits. */
const pitchPx = 33;
/** Drawn before the index and after the line, in divisions or as much as there is. */
const aroundPx = 72;
const labelPx = 52;
/** Between two figures, and between a figure and the frame. */
const apartPx = 6;
const halfOf = (text: string) => textWidth({ text, sizePx: 15 }) / 2;

/**
 * Lays out the dial rule: a tick for each division, a longer one at 5 and 10, figures at those that stand
 * clear of each other and of the frame. Where the way is long, divisions draw closer together, and where they would touch,
 * only fives and tens are drawn.
 */
export function dialRuleLayout({ width, standsAt, turnTo, label }: Facts): DialRuleLayout {
  const way = Math.abs(turnTo - standsAt);
  const room = Math.max(1, width - 2 * aroundPx);
  const pitch = Math.min(pitchPx, room / Math.max(1, way));
  // The way stands in the middle, as the picture has it, a little to the right.
  const middle = (standsAt + turnTo) / 2;
  const xOf = (division: number) => width / 2 + (division - middle) * pitch;
  const first = Math.ceil(middle - width / 2 / pitch);
  const last = Math.floor(middle + width / 2 / pitch);
  const stride = pitch >= 6 ? 1 : pitch >= 1.6 ? 5 : 10 ** Math.ceil(Math.log10(8 / pitch));
  const every =
    [5, 10, 20, 50, 100, 200, 500, 1000].find((step) => step * pitch >= labelPx) ?? 1000;
  const ticks: DialRuleLayout['ticks'] = [];
  for (let division = Math.ceil(first / stride) * stride; division <= last; division += stride) {
    const x = xOf(division);
    if (x < 1 || x > width - 1) continue;
    const isMajor = division % (10 * (stride > 5 ? stride : 1)) === 0;
    const kind = isMajor ? 'major' : division % 5 === 0 ? 'medium' : 'minor';
    const text = division % every === 0 ? label(division) : null;
    const edge = apartPx + halfOf(text ?? '');
    ticks.push({ x, kind, label: text, labelX: Math.min(Math.max(x, edge), width - edge) });
  }
  dropCrowded(ticks);
  return { ticks, standsX: xOf(standsAt), turnX: xOf(turnTo) };
}

/** A figure moved in from the frame gives way to the one beside it. */
function dropCrowded(ticks: DialRuleLayout['ticks']): void {
  const figures = ticks.filter(({ label }) => label !== null);
  for (const [outer, inner] of [
    [figures[0], figures[1]],
    [figures.at(-1), figures.at(-2)],
  ]) {
    if (outer === undefined || inner === undefined) continue;
    const least = halfOf(outer.label!) + halfOf(inner.label ?? '') + apartPx;
    if (Math.abs(outer.labelX - inner.labelX) < least) outer.label = null;
  }
}
