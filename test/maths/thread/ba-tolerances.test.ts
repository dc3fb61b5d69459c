import { describe, expect, it } from 'vitest';
import { baTolerances } from '@/lib/maths/thread/ba-tolerances';

describe('baTolerances', () => {
  it('gives the tolerances of 2 BA', () => {
    // BS 93:2008 annex B with P = 0.81, by hand.
    const { externalClose, externalNormal, internal } = baTolerances(2);
    expect(externalClose.majorMm).toBeCloseTo(0.1215, 12);
    expect(externalNormal.majorMm).toBeCloseTo(0.162, 12);
    expect(externalClose.effectiveMm).toBeCloseTo(0.0848, 12);
    expect(externalNormal.effectiveMm).toBeCloseTo(0.106, 12);
    expect(externalClose.minorMm).toBeCloseTo(0.1696, 12);
    expect(externalNormal.minorMm).toBeCloseTo(0.212, 12);
    expect(internal.effectiveMm).toBeCloseTo(0.1272, 12);
    expect(internal.minorMm).toBeCloseTo(0.30375, 12);
  });
});
