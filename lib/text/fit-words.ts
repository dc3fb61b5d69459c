import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import type { Shown } from './shown-size';

type FitClearances = { minPm: number; maxPm: number; aimPm: number };

/** A thousandth of a millimetre or a ten-thousandth of an inch: the place clearances are said to. */
const clearanceStepPm = { mm: 1_000_000, in: 2_540_000 };

/** A clearance with its unit left out: 0.010. Interference has a minus. */
export function clearanceFigure(pm: number, { unit, decimal }: Shown): string {
  const decimals = decimalsForResolution(clearanceStepPm[unit], unit);
  return formatLength(pm, { unit, decimals, decimal });
}

/** What a fit leaves an open feature: "its liner −0.008 / −0.012". */
export function fitLimitsWords(
  partnerName: string,
  { minPm, maxPm }: FitClearances,
  shown: Shown,
): string {
  const part = partnerName.toLowerCase();
  return `its ${part} ${clearanceFigure(-minPm, shown)} / ${clearanceFigure(-maxPm, shown)}`;
}

/** What is wanted of a fit: "Wanted 0.008 to 0.012 clear, aim 0.010." */
export function wantedWords({ minPm, maxPm, aimPm }: FitClearances, shown: Shown): string {
  const figure = (pm: number) => clearanceFigure(Math.abs(pm), shown);
  const aim = `aim ${figure(aimPm)}${aimPm < 0 ? ' tight' : ''}`;
  if (minPm >= 0) return `Wanted ${figure(minPm)} to ${figure(maxPm)} clear, ${aim}.`;
  if (maxPm <= 0) return `Wanted ${figure(maxPm)} to ${figure(minPm)} tight, ${aim}.`;
  return `Wanted ${figure(minPm)} tight to ${figure(maxPm)} clear, ${aim}.`;
}

/** Whole steps of the matrix: 10 for 0.010 mm; the head of the table says the step. */
export function clearanceSteps(pm: number, { unit }: Pick<Shown, 'unit'>): string {
  return formatSteps(pm / clearanceStepPm[unit]);
}

export function stepWords({ unit, decimal }: Shown): string {
  return `in ${clearanceFigure(clearanceStepPm[unit], { unit, decimal })} ${unit === 'mm' ? 'mm' : 'inch'}`;
}

function formatSteps(steps: number): string {
  const whole = Math.round(steps);
  return whole < 0 ? `\u2212${-whole}` : String(whole);
}
