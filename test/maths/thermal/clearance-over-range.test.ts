import { describe, expect, it } from 'vitest';
import { clearanceOverRange } from '@/lib/maths/thermal/clearance-over-range';

// Coefficients are made up of usual size; nothing is said of a material.
const steel = 11.5e-6;
const light = 23.1e-6;

describe('clearanceOverRange', () => {
  const pair = {
    bore: { size20Mm: 25.01, expansionPerC: light },
    shaft: { size20Mm: 24.99, expansionPerC: steel },
  };

  it('finds a light-metal housing tightest in the frost', () => {
    const found = clearanceOverRange({ ...pair, temperaturesC: [60, -25, 20] });
    expect(found.smallestAtC).toBe(-25);
    // By hand: 25.01 (1 - 23.1e-6 x 45) - 24.99 (1 - 11.5e-6 x 45) = 0.00693443.
    expect(found.smallestMm).toBeCloseTo(0.00693443, 9);
    expect(found.clearancesMm).toHaveLength(3);
  });

  it('refuses an empty list', () => {
    expect(() => clearanceOverRange({ ...pair, temperaturesC: [] })).toThrow(
      expect.objectContaining({ code: 'clearance-over-range/no-temperature' }),
    );
  });
});
