import type { Shape } from './shape';

/**
 * A shape to a hundredth of a pixel. The server and the browser may differ in the last bits of a logarithm or
 * a quotient; drawn to a hundredth they are the same picture.
 */
export function roundedShape<Role extends string>(shape: Shape<Role>): Shape<Role> {
  const entries = Object.entries(shape).map(([name, value]) => {
    if (typeof value === 'number') return [name, hundredth(value)];
    if (name === 'd')
      return [name, String(value).replace(/-?\d+\.\d+/g, (n) => String(hundredth(Number(n))))];
    return [name, value];
  });
  return Object.fromEntries(entries) as Shape<Role>;
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
