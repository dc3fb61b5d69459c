import type { CutStep } from './cut-steps';

/** Whether a cut was asked for and measured on both sides, so that got over asked says something of the next. */
export function teaches({ kind, ratio, askedPm, beforePm, afterPm, cut }: CutStep): boolean {
  const isSaid = kind === 'cut' && ratio !== null && askedPm! > 0;
  return isSaid && beforePm! > 0 && afterPm! > 0 && (cut.struckAt ?? null) === null;
}
