import type { DecimalMark } from '@/lib/units/picometres';

/**
 * A probability as a share of a hundred: whole ones, with a decimal near both ends, and never quite none or
 * quite all.
 *
 * @example
 * chanceWords(0.964, '.'); // '96 %'
 * chanceWords(0.99997, ','); // 'over 99,9 %'
 */
export function chanceWords(chance: number, decimal: DecimalMark): string {
  const share = (decimals: number) => percent(chance, decimals, decimal);
  if (chance > 0.9995) return `over ${percent(0.999, 1, decimal)}`;
  if (chance < 0.0005) return `under ${percent(0.001, 1, decimal)}`;
  return chance >= 0.985 || chance < 0.015 ? share(1) : share(0);
}

function percent(chance: number, decimals: number, decimal: DecimalMark): string {
  const text = (100 * chance).toFixed(decimals);
  return `${decimal === ',' ? text.replace('.', ',') : text} %`;
}
