/**
 * Whether what is typed goes into an input that has the focus.
 *
 * A dialog that closes gives the focus back and leaves the caret where it was clicked: Chromium then types
 * at the caret, which is nowhere, and the characters are lost.
 */
export function isCaretIn(input: HTMLInputElement): boolean {
  const at = document.getSelection()?.anchorNode ?? null;
  return at === null || (at.nodeType !== Node.TEXT_NODE && at.contains(input));
}
