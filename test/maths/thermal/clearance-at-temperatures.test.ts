import { describe, expect, it } from 'vitest';
import { clearanceAtTemperatures } from '@/lib/maths/thermal/clearance-at-temperatures';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;

describe('clearanceAtTemperatures', () => {
  it('gives each piece its own material and temperature', () => {
    // By hand: bore 60 at 20 degrees; shaft 59.955 x (1 + 11.5e-6 x 65) = 59.9998163625.
    const found = clearanceAtTemperatures({
      bore: { size20Mm: 60, expansionPerC: light },
      boreC: 20,
      shaft: { size20Mm: 59.955, expansionPerC: steel },
      shaftC: 85,
    });
    expect(found.boreMm).toBe(60);
    expect(found.clearanceMm).toBeCloseTo(0.0001836375, 10);
  });
});
