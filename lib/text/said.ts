/** A sentence whose figures are set in the face of what is measured. */
export type Said = readonly (string | { figure: string })[];

/** The sentence as plain text. */
export function plainText(said: Said): string {
  return said.map((part) => (typeof part === 'string' ? part : part.figure)).join('');
}
