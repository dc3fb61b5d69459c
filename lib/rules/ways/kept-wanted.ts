import type { Fit } from '@/lib/schema/fit';
import { ruleClearances } from './read-rule';
import type { FitSaid, WantedFields } from './read-wanted';

/**
 * What is kept of a fit that is changed: each figure that was typed anew as it was read, each that was left
 * alone as it was, to the last picometre. `first` is the form as it was filled in from the fit.
 *
 * Figures worked out from classes or a rule are left alone while what they are worked out from is; where the
 * nominal is another one since, they are worked out anew with the first change.
 */
export function keptWanted(
  fit: Fit,
  first: FitSaid,
  said: FitSaid,
  read: WantedFields,
): WantedFields {
  if (said.way !== first.way) return read;
  if (said.way === 'limits') {
    const kept = (field: 'min' | 'max' | 'aim', wasPm: number, isPm: number) =>
      said.limits[field] === first.limits[field] ? wasPm : isPm;
    const minPm = kept('min', fit.minPm, read.minPm);
    const maxPm = kept('max', fit.maxPm, read.maxPm);
    const aimPm = said.limits.aim.trim() === '' ? read.aimPm : kept('aim', fit.aimPm, read.aimPm);
    return { ...read, minPm, maxPm, aimPm: within(aimPm, minPm, maxPm) };
  }
  if (said.way === 'classes') {
    const isSame = said.classes === first.classes && read.atPm === (fit.atPm ?? null);
    if (!isSame) return read;
    const { minPm, maxPm } = fit;
    const aimPm = said.classesAim === first.classesAim ? fit.aimPm : read.aimPm;
    return { ...read, minPm, maxPm, aimPm: within(aimPm, minPm, maxPm) };
  }
  const isSame = (field: keyof FitSaid['rule']) => said.rule[field] === first.rule[field];
  const fields = ['fixed', 'min', 'aim', 'max'] as const;
  if (fields.every(isSame)) {
    const { minPm, maxPm, aimPm } = fit;
    const { atPm = null, ruleFixedPm = null, ruleMinNmPerMm = null } = fit;
    const { ruleAimNmPerMm = null, ruleMaxNmPerMm = null } = fit;
    const slopes = { ruleMinNmPerMm, ruleAimNmPerMm, ruleMaxNmPerMm };
    return { ...read, minPm, maxPm, aimPm, atPm, ruleFixedPm, ...slopes };
  }
  const { atPm } = read;
  if (!isSame('fixed') || atPm === null || atPm === undefined) return read;
  // A slope is filled in whole; the constant may have no end in the unit.
  const fixedPm = fit.ruleFixedPm ?? 0;
  const { ruleMinNmPerMm, ruleAimNmPerMm, ruleMaxNmPerMm } = read;
  const rule = {
    fixedPm,
    minNmPerMm: ruleMinNmPerMm!,
    aimNmPerMm: ruleAimNmPerMm!,
    maxNmPerMm: ruleMaxNmPerMm!,
  };
  return { ...read, ...ruleClearances(rule, atPm), ruleFixedPm: fixedPm };
}

/** Two figures of which one was rounded when it was shown may lie a hair the wrong way round. */
function within(pm: number, minPm: number, maxPm: number): number {
  return Math.min(maxPm, Math.max(minPm, pm));
}
