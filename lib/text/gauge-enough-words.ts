import { ratioWords } from './cut-words';
import { shownLength, type Shown } from './shown-size';

/** That a gauge is too poor for a band, with the number; empty where it is good enough or nothing is known. */
export function gaugeEnoughWords(
  enough: { ratio: number; enough: boolean } | null,
  facts: { gauge: string; bandPm: number; resolutionPm: number },
  shown: Shown,
): string {
  if (enough === null || enough.enough) return '';
  // Cut off, not rounded: 3.96 must not be said to be 4.0 and too little.
  const ratio = ratioWords(Math.floor(enough.ratio * 10) / 10, 1, shown);
  const band = shownLength(facts.bandPm, facts.resolutionPm, shown);
  return `The gauge is too poor for this band: ${ratio} to 1, where 4 to 1 is wanted. ${facts.gauge} has to tell ${band} apart.`;
}
