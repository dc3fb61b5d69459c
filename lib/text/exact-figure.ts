import { formatLength } from '@/lib/units/format-length';
import type { Shown } from './shown-size';

/** Nanometres at the most where the other unit has no end: a seventh place of an inch, a sixth of a millimetre. */
const endless = { mm: 6, in: 7 } as const;

/**
 * A length with every digit it has and none more: 0.0005 as 0.0005, with `least` places at the least. A length
 * that has no end in the unit is shown to a few nanometres.
 */
export function exactFigure(pm: number, { unit, decimal }: Shown, least = 0): string {
  const most = isExact(pm, unit) ? 9 : endless[unit];
  const text = formatLength(pm, { unit, decimals: most, decimal });
  const mark = text.indexOf(decimal);
  const spare = text.length - mark - 1 - least;
  const zeros = /0*$/.exec(text)![0].length;
  const cut = text.slice(0, text.length - Math.min(zeros, spare));
  return cut.endsWith(decimal) ? cut.slice(0, -1) : cut;
}

/** It ends within nine places. */
function isExact(pm: number, unit: Shown['unit']): boolean {
  return unit === 'mm' || (BigInt(pm) * 10n ** 9n) % 25_400_000_000n === 0n;
}
