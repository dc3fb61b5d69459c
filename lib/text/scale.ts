/**
 * How many times full size a picture is drawn, to three figures; smaller than full size as a ratio, "1 : 10".
 *
 * @example
 * scaleWords(11_536); // '11 500 times full size'
 */
export function scaleWords(timesFullSize: number): string {
  if (timesFullSize < 0.95) return `1 : ${threeFigures(1 / timesFullSize)}`;
  const times = threeFigures(timesFullSize);
  return times === '1' ? 'full size' : `${times} times full size`;
}

/** Thousands apart by a no-break space. */
function threeFigures(value: number): string {
  const rounded = Number(value.toPrecision(3));
  return String(rounded).replace(/\B(?=(\d{3})+$)/g, '\u00a0');
}
