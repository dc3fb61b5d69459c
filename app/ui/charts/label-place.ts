type At = { x: number; y: number };

/**
 * Where the label of a point stands, px: its left end and its middle height. Right of the point, else left of it,
 * else ending at the plot's right edge; never over the upright axis or past that edge where it fits between them.
 * Under the point or over it: of these the first that lies over the fewest of `marks`.
 */
export function labelPlace(
  point: At,
  widthPx: number,
  plot: { left: number; right: number },
  marks: readonly At[],
): At {
  const [least, most] = [plot.left + axisPx, plot.right - widthPx];
  const beside = [point.x + besidePx, point.x - besidePx - widthPx].filter(
    (x) => x >= least && x <= most,
  );
  const places = (beside.length > 0 ? beside : [Math.max(least, most)]).flatMap((x) => [
    { x, y: point.y + offPx },
    { x, y: point.y - offPx },
  ]);
  const coveredBy = ({ x, y }: At) =>
    marks.filter(
      (mark) =>
        mark.x > x - besidePx / 2 &&
        mark.x < x + widthPx + besidePx / 2 &&
        Math.abs(mark.y - y) < offPx - 2,
    ).length;
  const covered = places.map(coveredBy);
  return places[covered.indexOf(Math.min(...covered))]!;
}

/** From the middle of the point, whose dot is 7 px. */
const besidePx = 12;

/** From its height to the middle of a line of 16 px. */
const offPx = 16;

/** Clear of the axis. */
const axisPx = 4;
