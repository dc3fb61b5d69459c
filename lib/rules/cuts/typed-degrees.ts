/** Temperatures a piece on a machine may have, thousandths of a degree C. */
const [lowest, highest] = [-60_000, 400_000];

/**
 * A typed temperature in thousandths of a degree C: `41`, `21,5`, `-5 C`, `70 F`. Null where it is none, or
 * none that a piece on a machine can have.
 */
export function typedDegrees(text: string): number | null {
  const found = /^\s*([-+\u2212]?)\s*(\d{1,3})(?:[.,](\d{1,3}))?\s*(?:°\s*)?([cf]?)\s*$/i.exec(
    text,
  );
  if (found === null) return null;
  const [, sign, whole, part = '', unit] = found;
  const size = Number(whole) * 1000 + Number(part.padEnd(3, '0'));
  const milli = sign === '' || sign === '+' ? size : -size;
  const milliC = unit?.toLowerCase() === 'f' ? Math.round(((milli - 32_000) * 5) / 9) : milli;
  return milliC < lowest || milliC > highest ? null : milliC;
}
