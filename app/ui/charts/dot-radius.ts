/**
 * Radius of the dots of a chart whose axis goes along so many turns, px, as chart.js asks for it: `mostPx` where
 * there is room, less where dots would run into each other, never too small to see.
 */
export function dotRadius(
  mostPx: number,
  along: { min: number; max: number },
): (asked: { chart: { chartArea?: { width: number } } }) => number {
  return ({ chart }) => {
    const pitchPx = (chart.chartArea?.width ?? Infinity) / (along.max - along.min);
    return Math.max(leastPx, Math.min(mostPx, pitchPx / 2));
  };
}

const leastPx = 2;
