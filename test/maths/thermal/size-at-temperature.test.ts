import { describe, expect, it } from 'vitest';
import { sizeAtTemperature } from '@/lib/maths/thermal/size-at-temperature';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;

describe('sizeAtTemperature', () => {
  it('lets 100 mm at 11.5e-6 grow by 0.069 mm over 60 degrees', () => {
    // By hand: 100 x 11.5e-6 x 60 = 0.069.
    const hot = sizeAtTemperature({ size20Mm: 100, expansionPerC: steel, temperatureC: 80 });
    expect(hot).toBeCloseTo(100.069, 12);
  });

  it('changes nothing at 20 degrees', () => {
    expect(sizeAtTemperature({ size20Mm: 33.3, expansionPerC: light, temperatureC: 20 })).toBe(
      33.3,
    );
  });

  it.each([
    ['size-at-temperature/length', { size20Mm: 0 }],
    ['size-at-temperature/expansion', { expansionPerC: 11.5 }],
    ['size-at-temperature/expansion', { expansionPerC: NaN }],
    ['size-at-temperature/temperature', { temperatureC: -274 }],
    ['size-at-temperature/temperature', { temperatureC: Infinity }],
  ])('refuses by %s', (code, part) => {
    const good = { size20Mm: 10, expansionPerC: steel, temperatureC: 30 };
    expect(() => sizeAtTemperature({ ...good, ...part })).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
