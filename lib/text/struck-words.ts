/** A fit that no sheet shows: why, and what brings it back. */
export function fitOutWords(name: string, featureName: string | null): string {
  return featureName === null
    ? `${name} is struck out.`
    : `${name} is not shown: ${featureName.toLowerCase()} is struck out. Put that back on the job as drawn.`;
}

/** What is said of a fit that can be struck out. */
export const strikeFitWords =
  'It leaves this sheet with its pairs and targets. Nothing is erased; it can be put back here.';

/** A part or a feature of the job as drawn that is struck out. */
export function drawnOutWords(what: 'part' | 'feature'): string {
  return what === 'part'
    ? 'struck out, with its pieces and features'
    : 'struck out; its readings stay';
}
