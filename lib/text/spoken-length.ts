import type { LengthUnit } from '@/lib/units/picometres';
import { shownLength } from './shown-size';

const figures = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];

/**
 * A length as it is read out at the bench: figure by figure, the mark as "point", the unit last.
 *
 * In inches a nought before the point is left out, as it is on the drawing. Common practice, no source.
 *
 * @example spokenLength(17_995_000_000, 1_000_000, 'mm') // 'one seven point nine nine five millimetres'
 * @example spokenLength(24_985_980_000, 2_540_000, 'in') // 'point nine eight three seven inches'
 */
export function spokenLength(pm: number, resolutionPm: number, unit: LengthUnit): string {
  const text = shownLength(pm, resolutionPm, { unit, decimal: '.' });
  const plain = unit === 'in' ? text.replace(/^(\u2212?)0\./, '$1.') : text;
  const words = [...plain].flatMap((character) => {
    if (character === '.') return ['point'];
    if (character === '\u2212') return ['minus'];
    const word = figures[Number(character)];
    return word === undefined || character.trim() === '' ? [] : [word];
  });
  return [...words, unit === 'mm' ? 'millimetres' : 'inches'].join(' ');
}
