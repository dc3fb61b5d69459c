import { clearWords } from './clear-words';
import { shownSize, type Shown } from './shown-size';

type LookFacts = {
  act: 'made final' | 'let stand';
  by: string | null;
  clearancePm: number | null;
  uncertaintyPm: number | null;
};

/** One act on a pair, after its time: "made final by M. Hale, 0.011 ± 0.001 clear". */
export function lookWords(look: LookFacts, stepPm: number, shown: Shown): string {
  const { act, by, clearancePm, uncertaintyPm } = look;
  const figure =
    clearancePm === null
      ? 'without a size'
      : asMadeWords(clearancePm, uncertaintyPm, stepPm, shown);
  return `${act}${by === null ? '' : ` by ${by}`}, ${figure}`;
}

/** A clearance as it was recorded, with its uncertainty where that was kept: "0.011 ± 0.001 clear". */
export function asMadeWords(
  clearancePm: number,
  uncertaintyPm: number | null,
  stepPm: number,
  shown: Shown,
): string {
  if (uncertaintyPm === null || uncertaintyPm === 0) return clearWords(clearancePm, stepPm, shown);
  const size = { valuePm: Math.abs(clearancePm), expandedPm: uncertaintyPm };
  const { value, plusMinus } = shownSize(size, stepPm, shown);
  return `${value} ± ${plusMinus} ${clearancePm < 0 ? 'tight' : 'clear'}`;
}

/** A final pair that was undone, after its time: "undone by M. Hale: scored at assembly. It was …". */
export function undoneWords(
  facts: { by: string | null; reason: string; clearancePm: number | null; mark: string },
  stepPm: number,
  shown: Shown,
): string {
  const { by, reason, clearancePm, mark } = facts;
  const why = reason === '' ? '' : `: ${reason.replace(/\.$/, '')}`;
  const was = clearancePm === null ? '' : `, ${clearWords(clearancePm, stepPm, shown)}`;
  const pair = mark === '' ? 'It was final' : `It was pair ${mark}`;
  return `undone${by === null ? '' : ` by ${by}`}${why}. ${pair}${was}.`;
}

/** How far the fit is, in the title block: final pairs of as many as there can be. */
export function pairsFinalWords(final: number, most: number): string {
  return `${final} of ${Math.max(final, most)} final`;
}

/** A pair mark that another pair of the fit carries. */
export function markTakenWords(mark: string, external: string, internal: string): string {
  return `${external} in ${internal} carries the mark ${mark} already. Two sets must not look alike.`;
}
