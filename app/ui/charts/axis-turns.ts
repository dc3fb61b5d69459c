import type { RunView } from '@/lib/rules/run-view';
import { textWidth } from '../strip/text-width';
import { tickStep } from './tick-step';

/** The turns of a run along the axis of its charts. */
export type AxisTurns = {
  /** The last turn. */
  end: number;
  /** Mark of the first piece measured. */
  firstMark: string;
  /** Where a piece has several turns, each piece at its first one; else null: a turn is a piece. */
  pieces: readonly { ordinal: number; mark: string }[] | null;
};

/** The axis of a run: up to the end of its batch, or of what is measured beyond it. */
export function axisTurns({ features, pieces, points }: RunView): AxisTurns {
  const end = Math.max(pieces.at(-1)?.ordinal ?? 1, points.at(-1)?.ordinal ?? 1);
  const firstMark = points[0]?.mark ?? '';
  if (features.length === 1) return { end, firstMark, pieces: null };
  const firsts = pieces.filter(({ id }, index) => id !== pieces[index - 1]?.id);
  return {
    end,
    firstMark,
    pieces: firsts.map(({ ordinal, piece }) => ({ ordinal, mark: piece.mark })),
  };
}

/** What stands under the axis, a turn being `pitchPx` wide. No two names touch, and the last always stands. */
export function axisTicks(
  { end, firstMark, pieces }: AxisTurns,
  pitchPx: number,
): { ordinal: number; text: string | null }[] {
  if (pieces !== null) return pieceTicks(pieces, pitchPx);
  const every = tickStep(34 / pitchPx, 1);
  // So dense that a tick without a name says nothing.
  const isDense = every > 10;
  const spanOf = (ordinal: number) => {
    const text = turnText(ordinal, end, firstMark);
    const halfPx = textWidth({ text, sizePx: axisTextPx }) / 2;
    return { text, from: ordinal * pitchPx - halfPx, to: ordinal * pitchPx + halfPx };
  };
  const lastFrom = spanOf(end).from;
  let freePx = -Infinity;
  const ticks: { ordinal: number; text: string | null }[] = [];
  for (let ordinal = 1; ordinal <= end; ordinal += 1) {
    if (ordinal === 1 || ordinal === end || ordinal % every === 0) {
      const { text, from, to } = spanOf(ordinal);
      if (ordinal === end || (from >= freePx && to + characterPx <= lastFrom)) {
        freePx = to + apartPx;
        ticks.push({ ordinal, text });
        continue;
      }
    }
    if (!isDense) ticks.push({ ordinal, text: null });
  }
  return ticks;
}

function pieceTicks(pieces: NonNullable<AxisTurns['pieces']>, pitchPx: number) {
  let freePx = -Infinity;
  return pieces.map(({ ordinal, mark }) => {
    const halfPx = textWidth({ text: mark, sizePx: axisTextPx }) / 2;
    if (ordinal * pitchPx - halfPx < freePx) return { ordinal, text: null };
    freePx = ordinal * pitchPx + halfPx + apartPx;
    return { ordinal, text: mark };
  });
}

/** Of what stands on the axes of a chart and its drawing. */
export const axisTextPx = 14;

/** So far apart are two texts. */
const apartPx = 5;

/** The last, a word as well as a figure, stands a figure's width clear of the one before it. */
const characterPx = textWidth({ text: '0', sizePx: axisTextPx });

/** `W1` under the first where marks are a prefix and a number, the bare number under any other. */
function turnText(ordinal: number, end: number, firstMark: string): string {
  if (ordinal === 1) return `${firstMark.replace(/\d+$/, '')}1`;
  return ordinal === end ? `${ordinal}, last` : String(ordinal);
}
