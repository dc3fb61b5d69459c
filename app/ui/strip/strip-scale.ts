import type { SpanPm, StripData } from './strip-data';
import { stripSpan } from './strip-span';
import { tickLadder, type TickLadder } from './tick-ladder';

export type StripScale = {
  /** Both ends, on minor ticks, pm. */
  span: SpanPm;
  ladder: TickLadder;
  pxPerPm: number;
  /** Where a length stands, px from the left. */
  xOf: (pm: number) => number;
  /** Whether a length is on the strip. */
  holds: (pm: number) => boolean;
};

/** The scale of a strip: its held or its own span, with both ends snapped out to a minor tick. */
export function stripScale(data: StripData, widthPx: number, numeralPx: number): StripScale {
  let span = data.spanPm ?? stripSpan(data);
  let ladder = ladderOf(data, span, widthPx, numeralPx);
  // Snapping out makes the ticks a little closer, which may call for the next step: three rounds settle it.
  for (let round = 0; round < 3; round += 1) {
    span = snapped(span, ladder.minorPm);
    ladder = ladderOf(data, span, widthPx, numeralPx);
  }
  const ends = snapped(span, ladder.minorPm);
  const pxPerPm = widthPx / (ends.toPm - ends.fromPm);
  return {
    span: ends,
    ladder,
    pxPerPm,
    xOf: (pm) => (pm - ends.fromPm) * pxPerPm,
    holds: (pm) => pm >= ends.fromPm && pm <= ends.toPm,
  };
}

function ladderOf(data: StripData, span: SpanPm, widthPx: number, numeralPx: number): TickLadder {
  const { fromPm, toPm } = span;
  return tickLadder({
    unit: data.unit,
    resolutionPm: data.resolutionPm,
    pxPerPm: widthPx / (toPm - fromPm),
    longestPm: Math.abs(fromPm) > Math.abs(toPm) || fromPm < 0 ? fromPm : toPm,
    numeralPx,
  });
}

/** Out to whole steps; a span that is nothing becomes one step either way. */
function snapped({ fromPm, toPm }: SpanPm, stepPm: number): SpanPm {
  const from = Math.floor(fromPm / stepPm) * stepPm;
  const to = Math.ceil(toPm / stepPm) * stepPm;
  return to > from ? { fromPm: from, toPm: to } : { fromPm: from - stepPm, toPm: to + stepPm };
}
