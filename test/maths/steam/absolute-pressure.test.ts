import { describe, expect, it } from 'vitest';
import { absolutePressure, type PressureUnit } from '@/lib/maths/steam/absolute-pressure';

describe('absolutePressure', () => {
  it('adds the atmosphere to what the gauge shows, in each unit', () => {
    expect(absolutePressure(7, 'bar', 101.325)).toBeCloseTo(0.801325, 12);
    // 1 psi = 6894.757293168 Pa (exact pound, inch and standard gravity, NIST SP 811).
    expect(absolutePressure(100, 'psi', 101.325)).toBeCloseTo(0.7908007293168, 12);
    expect(absolutePressure(250, 'kPa', 95)).toBeCloseTo(0.345, 12);
    expect(absolutePressure(1, 'MPa', 100)).toBeCloseTo(1.1, 12);
  });

  it('takes a vacuum as below zero on the gauge', () => {
    expect(absolutePressure(-0.5, 'bar', 100)).toBeCloseTo(0.05, 12);
  });

  it.each([
    [-1.1, 'bar', 100],
    [1, 'bar', -1],
    [NaN, 'bar', 100],
    [1, 'ell' as PressureUnit, 100],
  ] as const)('refuses %d %s over %d kPa', (gauge, unit, atmosphere) => {
    expect(() => absolutePressure(gauge, unit, atmosphere)).toThrow(
      expect.objectContaining({ code: 'absolute-pressure/pressure' }),
    );
  });
});
