/**
 * Where the label of a point begins, px: right of the point where it fits into the plot, else left of it, else
 * under it, at the plot's right edge and never over its upright axis.
 */
export function labelLeft(
  pointPx: number,
  widthPx: number,
  plot: { left: number; right: number },
): number {
  if (pointPx + besidePx + widthPx <= plot.right) return pointPx + besidePx;
  const leftPx = pointPx - besidePx - widthPx;
  return leftPx >= plot.left + axisPx ? leftPx : Math.max(plot.left + axisPx, plot.right - widthPx);
}

/** From the middle of the point, whose dot is 7 px. */
const besidePx = 12;

/** Clear of the axis. */
const axisPx = 4;
