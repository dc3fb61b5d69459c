import { textWidth } from '../strip/text-width';

/** How wide a figure is in B612, em, with a little to spare. */
export function emsOf(text: string): number {
  return textWidth({ text, sizePx: 1 }) + 0.05;
}
