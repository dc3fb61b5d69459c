import { ratioWords } from './cut-words';
import { shownLength, type Shown } from './shown-size';

type Facts = {
  gauge: string;
  /** The piece whose size is too little known; empty where nothing of it was read and its partner stands for it. */
  mark: string;
  readings: number;
  expandedPm: number;
  bandPm: number;
  resolutionPm: number;
};

/** That a gauge is too poor for a band, with the number; empty where it is good enough or nothing is known. */
export function gaugeEnoughWords(
  enough: { ratio: number; enough: boolean } | null,
  facts: Facts,
  shown: Shown,
): string {
  if (enough === null || enough.enough) return '';
  const { mark, readings, gauge, resolutionPm } = facts;
  // Cut off, not rounded: 3.96 must not be said to be 4.0 and too little.
  const ratio = ratioWords(Math.floor(enough.ratio * 10) / 10, 1, shown);
  const figure = (pm: number) =>
    shownLength(Math.ceil(pm / resolutionPm) * resolutionPm, resolutionPm, shown);
  const band = shownLength(facts.bandPm, resolutionPm, shown);
  const known =
    mark === ''
      ? `${gauge} tells a size to ${figure(facts.expandedPm)}`
      : `${readings === 1 ? 'One reading' : `${readings} readings`} with ${gauge} tell${readings === 1 ? 's' : ''} ${mark} to ${figure(facts.expandedPm)}`;
  return `Too poor for a band of ${band}: ${known}, ${ratio} to 1 where 4 to 1 is wanted. Read it more often, or finer.`;
}
