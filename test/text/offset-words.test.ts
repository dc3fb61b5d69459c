import { expect, it } from 'vitest';
import { offsetAmount } from '@/lib/text/offset-amount';
import { offsetFigures, offsetLabels, thenWords } from '@/lib/text/offset-words';

it('labels an offset by what the dial counts, and a length by its size', () => {
  const labels = (onDiameter: boolean, dial: 'radius' | 'diameter', onDialPm: number) =>
    Object.values(offsetLabels({ onDiameter, dial, onDialPm }));
  expect(labels(true, 'radius', -1)).toEqual(['Offset, on diameter', 'Radius dial, smaller']);
  expect(labels(true, 'diameter', 1)).toEqual(['Offset, on diameter', 'Diameter dial, larger']);
  expect(labels(false, 'diameter', 1)).toEqual(['Offset, on the size', 'On the dial, larger']);
});

it('gives an offset in the unit the dial is marked in, named where another is shown', () => {
  const um = 1_000_000;
  const back = { onDiameterPm: -20 * um, onDialPm: -10 * um };
  expect(offsetFigures(back, 'mm', { unit: 'mm', decimal: ',' })).toEqual({
    offset: '\u22120,020',
    dial: '0,010',
  });
  expect(offsetFigures(back, 'mm', { unit: 'in', decimal: '.' })).toEqual({
    offset: '\u22120.020 mm',
    dial: '0.010 mm',
  });
  // A thou on diameter, 25.4 um.
  const thou = { onDiameterPm: 25.4 * um, onDialPm: 12.7 * um };
  expect(offsetFigures(thou, 'in', { unit: 'mm', decimal: '.' })).toEqual({
    offset: '+0.0010 in',
    dial: '0.0005 in',
  });
});

it('says where the next piece comes out', () => {
  expect(thenWords('W15', '11.980')).toBe('Then W15 comes out near 11.980: an estimate.');
});

it('says an offset as it was put in, a place finer than the chart where it was', () => {
  const um = 1_000_000;
  const [mm, inch] = [{ unit: 'mm', decimal: ',' } as const, { unit: 'in', decimal: '.' } as const];
  expect([-10 * um, 2.5 * um, 25.4 * um].map((pm) => offsetAmount(pm, mm))).toEqual([
    '\u22120,010',
    '+0,0025',
    '+0,0254',
  ]);
  expect([25.4 * um, -1.27 * um].map((pm) => offsetAmount(pm, inch))).toEqual([
    '+0.0010',
    '\u22120.00005',
  ]);
  // A hundredth of a millimetre has no end in inches: to the step of the chart.
  expect(offsetAmount(10 * um, inch)).toBe('+0.0004');
});
