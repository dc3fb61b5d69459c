/** The character that begins at a place in a text, whole even outside the basic plane; '' past the end. */
export function characterAt(text: string, at: number): string {
  const point = text.codePointAt(at);
  return point === undefined ? '' : String.fromCodePoint(point);
}
