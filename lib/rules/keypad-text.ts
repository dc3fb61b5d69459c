/**
 * What stands in a line after a key of the screen was pressed: a character goes to its end, the sign turns from
 * none to plus to minus and to none again, rubbing out takes the last character.
 *
 * @example keypadText('18.00', '4') // '18.004'
 */
export function keypadText(text: string, key: string): string {
  switch (key) {
    case 'sign':
      if (text.startsWith('+')) return `-${text.slice(1)}`;
      return /^[-\u2212]/.test(text) ? text.slice(1) : `+${text}`;
    case 'rub out':
      return [...text].slice(0, -1).join('');
    default:
      return text + key;
  }
}
