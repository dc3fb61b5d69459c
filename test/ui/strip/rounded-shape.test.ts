import { expect, it } from 'vitest';
import { roundedShape } from '@/app/ui/strip/rounded-shape';

it('draws two sums that differ in their last bits at the same place', () => {
  const at = (x: number) =>
    roundedShape({ kind: 'rect', role: 'band', x, y: 4, width: x / 3, height: 10 });
  expect(at(0.1 + 0.2)).toEqual(at(0.3));
  expect(at(12.3449)).toMatchObject({ x: 12.34, width: 4.11, y: 4 });
});

it('rounds the numbers of a path and leaves its letters', () => {
  const path = { kind: 'path', role: 'notch', d: 'M 1.23456 -2.98765 L 3 4.1 Z' } as const;
  expect(roundedShape(path)).toMatchObject({ d: 'M 1.23 -2.99 L 3 4.1 Z' });
});
