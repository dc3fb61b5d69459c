import { textWidth } from './text-width';

/** As much of a text as is no wider than `mostPx`, with an ellipsis where some is left off; never nothing. */
export function shortened(text: string, sizePx: number, mostPx: number): string {
  if (textWidth({ text, sizePx }) <= mostPx) return text;
  const letters = [...text];
  for (let count = letters.length - 1; count > 1; count -= 1) {
    const cut = `${letters.slice(0, count).join('').trimEnd()}\u2026`;
    if (textWidth({ text: cut, sizePx }) <= mostPx) return cut;
  }
  return `${letters[0] ?? ''}\u2026`;
}
