import { expect, it } from 'vitest';
import { offsetLabels, thenWords } from '@/lib/text/offset-words';

it('labels an offset by what the dial counts, and a length by its size', () => {
  const labels = (onDiameter: boolean, dial: 'radius' | 'diameter', onDialPm: number) =>
    Object.values(offsetLabels({ onDiameter, dial, onDialPm }));
  expect(labels(true, 'radius', -1)).toEqual(['Offset, on diameter', 'Radius dial, smaller']);
  expect(labels(true, 'diameter', 1)).toEqual(['Offset, on diameter', 'Diameter dial, larger']);
  expect(labels(false, 'diameter', 1)).toEqual(['Offset, on the size', 'On the dial, larger']);
});

it('says where the next piece comes out', () => {
  expect(thenWords('W15', '11.980')).toBe('Then W15 comes out near 11.980: an estimate.');
});
