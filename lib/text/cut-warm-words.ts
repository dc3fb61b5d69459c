import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import type { Shown } from './shown-size';

type Warm =
  | { kind: 'not said' }
  | { kind: 'not known'; temperatureMilliC: number }
  | { kind: 'go on' | 'wait'; temperatureMilliC: number; excessPm: number };

/** What heat does to the size just measured; an estimate, and called so. Empty where nobody said how warm it is. */
export function warmWords(
  warm: Warm,
  { material, resolutionPm }: { material: string; resolutionPm: number },
  shown: Shown,
): string {
  if (warm.kind === 'not said') return '';
  const degrees = degreesWords(warm.temperatureMilliC, shown);
  if (warm.kind === 'not known') {
    const what =
      material === '' ? 'what it is made of is not said' : `${material} is not in the table`;
    return `Piece ${degrees}, and ${what}: nothing can be said of how large it reads.`;
  }
  const { excessPm, kind } = warm;
  const amount = amountWords(Math.abs(excessPm), resolutionPm, shown);
  const size = excessPm < 0 ? 'small' : 'large';
  if (kind === 'go on') {
    if (excessPm === 0) return `Piece ${degrees}: it reads as at 20 °C.`;
    return `Piece ${degrees}: it reads about ${amount} ${size}, small enough to go on.`;
  }
  const offPm = (excessPm / (warm.temperatureMilliC - 20_000)) * 10_000;
  const ten = amountWords(Math.round(Math.abs(offPm)), resolutionPm, shown);
  const word = excessPm < 0 ? 'cold' : 'warm';
  const than = excessPm < 0 ? 'smaller' : 'larger';
  return `The piece is ${word}: at ${degrees} about ${amount} ${than} than at 20 °C. Wait. An estimate; ten degrees more would be ${ten} more.`;
}

/** 41 °C, 21.5 °C. */
export function degreesWords(milliC: number, { decimal }: Pick<Shown, 'decimal'>): string {
  const text = String(milliC / 1000)
    .replace('.', decimal)
    .replace('-', '\u2212');
  return `${text} °C`;
}

/** A place more than the gauge shows where the amount is less than its step. */
function amountWords(pm: number, resolutionPm: number, { unit, decimal }: Shown): string {
  const more = pm < resolutionPm ? 1 : 0;
  const decimals = decimalsForResolution(resolutionPm, unit) + more;
  return formatLength(pm, { unit, decimals, decimal });
}
