/**
 * Radius of the dots of a chart whose axis goes along so many turns, px, as chart.js asks for it: `mostPx` where
 * there is room, less where pieces would run into each other, never too small to see. Larger ones stay the larger.
 */
export function dotRadius(
  mostPx: number,
  along: { min: number; max: number },
): (asked: { chart: { chartArea?: { width: number } } }) => number {
  return ({ chart }) => {
    const pitchPx = (chart.chartArea?.width ?? Infinity) / (along.max - along.min);
    return mostPx * Math.max(leastShare, Math.min(1, pitchPx / fullPitchPx));
  };
}

/** So far apart, dots of pieces stand clear of each other: twice their 5.5 px. */
const fullPitchPx = 11;

/** A dot of 5.5 px is 2 px at the least. */
const leastShare = 2 / 5.5;
