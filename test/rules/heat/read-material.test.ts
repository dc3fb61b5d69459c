import { describe, expect, it } from 'vitest';
import { readMaterial } from '@/lib/rules/heat/read-material';
import { materialFaultWords } from '@/lib/text/material-fault-words';

const text = {
  name: ' Colsibro ',
  expansion: '16.7',
  low: '16.5',
  high: '17',
  source: ' the mill ',
};

describe('readMaterial', () => {
  it('reads a material, blanks taken off', () => {
    expect(readMaterial(text, '.')).toEqual({
      kind: 'material',
      fields: {
        name: 'Colsibro',
        expansionNanoPerC: 16_700,
        lowNanoPerC: 16_500,
        highNanoPerC: 17_000,
        source: 'the mill',
      },
    });
  });

  it('takes an empty least or most for the coefficient itself', () => {
    expect(readMaterial({ ...text, low: '', high: ' ' }, '.')).toMatchObject({
      fields: { lowNanoPerC: 16_700, highNanoPerC: 16_700 },
    });
  });

  it.each([
    [{ name: ' ' }, 'name', 'A material needs a name.'],
    [{ expansion: '' }, 'expansion', 'Type millionths a degree, such as 11.7.'],
    [
      { expansion: '1670000' },
      'expansion',
      '1670000 is more than any material grows. Look at the point.',
    ],
    [{ low: '16.8' }, 'low', 'The coefficient lies between its least and its most.'],
    [{ high: '16.6' }, 'high', 'The coefficient lies between its least and its most.'],
    [{ high: 'x' }, 'high', '"x" is not a figure at "x". Type millionths a degree, such as 11.7.'],
  ])('says what is wrong with %o', (over, field, words) => {
    const all = { ...text, ...over };
    const read = readMaterial(all, '.');
    expect(read).toMatchObject({ kind: 'wrong', field });
    if (read.kind !== 'wrong') return;
    expect(materialFaultWords(read.problem, all[read.field])).toBe(words);
  });
});
