/**
 * The figure of a message of fixed length, as plain text with its sign and point; null where the message is
 * of another kind.
 *
 * STX (02 hex), polarity (0 is +, 1 is −), how many decimals, eight figures, a code for the unit, CR. What
 * the code stands for differs from maker to maker, so it is not read: the gauge's own unit rule decides.
 * Leading zeros are left out, all but one.
 *
 * Source: design/capture.md 1.2, "ASCII line, fixed": several meter manuals on manualshive and easymanua.ls.
 *
 * @example
 * serialFrame('\u00020300018003MM'); // '18.003'
 */
export function serialFrame(message: string): string | null {
  const found = frame.exec(message);
  if (found === null) return null;
  const [, polarity, decimals, figures] = found;
  const places = Number(decimals);
  const whole = figures!.slice(0, 8 - places).replace(/^0+(?=\d)/, '') || '0';
  const part = places === 0 ? '' : `.${figures!.slice(8 - places)}`;
  return `${polarity === '1' ? '-' : ''}${whole}${part}`;
}

// oxlint-disable-next-line no-control-regex -- the message begins with one
const frame = /^\u0002([01])([0-8])(\d{8})[\dA-Za-z]{0,2}$/;
