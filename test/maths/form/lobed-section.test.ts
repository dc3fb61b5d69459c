import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lobedSection } from '@/lib/maths/form/lobed-section';

describe('lobedSection', () => {
  it('shows nothing of three lobes to a two-point gauge', () => {
    expect(lobedSection({ lobes: 3, amplitudeMm: 0.005 })).toEqual({
      twoPointVariationMm: 0,
      roundnessZoneMm: 0.01,
      twoPointSees: false,
    });
  });

  it('agrees with a section walked round in small steps', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        fc.double({ min: 0, max: 0.1, noNaN: true }),
        (lobes, amplitudeMm) => {
          const radius = (t: number) => 20 + amplitudeMm * Math.cos(lobes * t);
          const turns = Array.from({ length: 720 }, (_, i) => (i * Math.PI) / 360);
          const diameters = turns.map((t) => radius(t) + radius(t + Math.PI));
          const radii = turns.map(radius);
          const range = (values: number[]) => Math.max(...values) - Math.min(...values);
          const found = lobedSection({ lobes, amplitudeMm });
          // 720 steps miss a peak of 12 lobes by at most amplitude (12 * pi / 720)^2 / 2.
          const missed = 4 * amplitudeMm * ((12 * Math.PI) / 720) ** 2 + 1e-12;
          expect(Math.abs(range(diameters) - found.twoPointVariationMm)).toBeLessThan(missed);
          expect(Math.abs(range(radii) - found.roundnessZoneMm)).toBeLessThan(missed);
        },
      ),
    );
  });

  it('sees nothing of a round section', () => {
    expect(lobedSection({ lobes: 2, amplitudeMm: 0 }).twoPointSees).toBe(false);
  });

  it.each([
    ['lobed-section/lobes', { lobes: 2.5, amplitudeMm: 0 }],
    ['lobed-section/lobes', { lobes: 1, amplitudeMm: 0 }],
    ['lobed-section/amplitude', { lobes: 2, amplitudeMm: -1 }],
  ])('refuses by %s', (code, section) => {
    expect(() => lobedSection(section)).toThrow(expect.objectContaining({ code }));
  });
});
