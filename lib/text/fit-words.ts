import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import { givenStep } from './given-step';
import type { Shown } from './shown-size';

type FitClearances = { minPm: number; maxPm: number; aimPm: number };

/** A thousandth of a millimetre or a ten-thousandth of an inch: the place clearances are said to. */
const usualStepPm = { mm: 1_000_000, in: 2_540_000 };
/** A band of fewer steps than this is said in tenths of them. */
const leastSteps = 4;

/**
 * The step the clearances of a fit are said in, pm: the usual one, or a tenth of it and so on where the fit's
 * own band is so narrow that its two ends would read alike; never finer than its gauges show.
 */
export function clearanceStep(
  { minPm, maxPm }: Pick<FitClearances, 'minPm' | 'maxPm'>,
  unit: Shown['unit'],
  gaugeStepPm = 1,
): number {
  let stepPm = usualStepPm[unit];
  const isTooCoarse = () => maxPm - minPm < leastSteps * stepPm && gaugeStepPm < stepPm;
  while (isTooCoarse() && stepPm > 1_000) stepPm /= 10;
  return stepPm;
}

/** A clearance with its unit left out: 0.010. Interference has a minus. */
export function clearanceFigure(
  pm: number,
  { unit, decimal }: Shown,
  stepPm = usualStepPm[unit],
): string {
  const decimals = decimalsForResolution(stepPm, unit);
  return formatLength(pm, { unit, decimals, decimal });
}

/** The same of a clearance that was asked for: to a place more where it is exact there only. */
export function wantedFigure(pm: number, shown: Shown, stepPm = usualStepPm[shown.unit]): string {
  return clearanceFigure(pm, shown, givenStep(pm, stepPm, shown.unit));
}

/** What a fit leaves an open feature: "its liner −0.008 / −0.012". */
export function fitLimitsWords(partnerName: string, fit: FitClearances, shown: Shown): string {
  const part = partnerName.toLowerCase();
  const figure = (pm: number) => wantedFigure(pm, shown, clearanceStep(fit, shown.unit));
  return `its ${part} ${figure(-fit.minPm)} / ${figure(-fit.maxPm)}`;
}

/** What is wanted of a fit: "Wanted 0.008 to 0.012 clear, aim 0.010." */
export function wantedWords(fit: FitClearances, shown: Shown): string {
  const { minPm, maxPm, aimPm } = fit;
  const stepPm = clearanceStep(fit, shown.unit);
  const figure = (pm: number) => wantedFigure(Math.abs(pm), shown, stepPm);
  const aim = `aim ${figure(aimPm)}${aimPm < 0 ? ' tight' : ''}`;
  if (minPm >= 0) return `Wanted ${figure(minPm)} to ${figure(maxPm)} clear, ${aim}.`;
  if (maxPm <= 0) return `Wanted ${figure(maxPm)} to ${figure(minPm)} tight, ${aim}.`;
  return `Wanted ${figure(minPm)} tight to ${figure(maxPm)} clear, ${aim}.`;
}

/** Whole steps of the matrix: 10 for 0.010 mm; the head of the table says the step. */
export function clearanceSteps(
  pm: number,
  { unit }: Pick<Shown, 'unit'>,
  stepPm = usualStepPm[unit],
): string {
  return formatSteps(pm / stepPm);
}

/** The aim in those steps: 20.5 where it lies between two. */
export function aimSteps(pm: number, { unit, decimal }: Shown, stepPm = usualStepPm[unit]): string {
  if (givenStep(pm, stepPm, unit) === stepPm) return formatSteps(pm / stepPm);
  const tenths = Math.round((10 * pm) / stepPm);
  const text = (Math.abs(tenths) / 10).toFixed(1).replace('.', decimal);
  return tenths < 0 ? `\u2212${text}` : text;
}

export function stepWords(shown: Shown, stepPm = usualStepPm[shown.unit]): string {
  return `in ${clearanceFigure(stepPm, shown, stepPm)} ${shown.unit === 'mm' ? 'mm' : 'inch'}`;
}

function formatSteps(steps: number): string {
  const whole = Math.round(steps);
  return whole < 0 ? `\u2212${-whole}` : String(whole);
}
