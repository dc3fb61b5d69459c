import { describe, expect, it } from 'vitest';
import { unifiedThread } from '@/lib/maths/thread/unified-thread';

describe('unifiedThread', () => {
  // ASME B1.1 limits as printed for 2A and 2B; tables round each limit to 0.0001 in before the next,
  // and the minor diameter to 0.001 in.
  it.each([
    [0.25, 20, 'UNC', 0.0011, [0.2489, 0.2408], [0.2164, 0.2127], [0.2175, 0.2224], [0.196, 0.207]],
    [
      0.375,
      16,
      'UNC',
      0.0013,
      [0.3737, 0.3643],
      [0.3331, 0.3287],
      [0.3344, 0.3401],
      [0.307, 0.321],
    ],
    [0.19, 32, 'UNF', 0.0009, [0.1891, 0.1831], [0.1688, 0.1658], [0.1697, 0.1736], [0.156, 0.164]],
    [
      0.138,
      32,
      'UNC',
      0.0008,
      [0.1372, 0.1312],
      [0.1169, 0.1141],
      [0.1177, 0.1214],
      [0.104, 0.114],
    ],
  ] as const)(
    'gives %d - %d %s as printed',
    (majorIn, tpi, series, allowance, major, pitch, nut, minor) => {
      const found = unifiedThread({ majorIn, tpi, series });
      const near = (got: number, wanted: number, within: number) =>
        expect(Math.abs(got - wanted)).toBeLessThan(within);
      near(found.allowanceIn, allowance, 0.00006);
      near(found.external.major.maxIn, major[0], 0.0001);
      near(found.external.major.minIn, major[1], 0.0001);
      near(found.external.pitch.maxIn, pitch[0], 0.0001);
      near(found.external.pitch.minIn, pitch[1], 0.0001);
      near(found.internal.pitch.minIn, nut[0], 0.0001);
      near(found.internal.pitch.maxIn, nut[1], 0.0001);
      near(found.internal.minor!.minIn, minor[0], 0.0006);
      near(found.internal.minor!.maxIn, minor[1], 0.0006);
    },
  );

  it('has no allowance in class 3A and other tolerances by the factors of the standard', () => {
    const quarter = { majorIn: 0.25, tpi: 20, series: 'UNC' } as const;
    const base = unifiedThread(quarter).pitchTolerance2AIn;
    const width = (limits: { maxIn: number; minIn: number }) => limits.maxIn - limits.minIn;
    const fine = unifiedThread({ ...quarter, externalClass: '3A' });
    expect(fine.external.major.maxIn).toBe(0.25);
    expect(width(fine.external.pitch) / base).toBeCloseTo(0.75, 9);
    const coarse = unifiedThread({ ...quarter, externalClass: '1A', internalClass: '1B' });
    expect(width(coarse.external.pitch) / base).toBeCloseTo(1.5, 9);
    expect(width(coarse.internal.pitch) / base).toBeCloseTo(1.95, 9);
    expect(width(coarse.external.major) / width(fine.external.major)).toBeCloseTo(1.5, 9);
    expect(coarse.external.major.maxIn).toBeCloseTo(0.25 - 0.3 * base, 12);
  });

  it('gives of class 3B the pitch diameter alone', () => {
    const quarter = { majorIn: 0.25, tpi: 20, series: 'UNC' } as const;
    const { internal, pitchTolerance2AIn } = unifiedThread({ ...quarter, internalClass: '3B' });
    expect('minor' in internal).toBe(false);
    // ASME B1.1: 0.975 of the tolerance of 2A; printed 0.2175 to 0.2211 (from memory).
    expect(internal.pitch.minIn).toBeCloseTo(0.2175, 4);
    expect(Math.abs(internal.pitch.maxIn - 0.2211)).toBeLessThan(0.0001);
    expect((internal.pitch.maxIn - internal.pitch.minIn) / pitchTolerance2AIn).toBeCloseTo(
      0.975,
      9,
    );
  });

  it('takes nine pitches as engagement of other series', () => {
    // By hand: D = 1, 20 threads: 0.0015 + 0.0015 sqrt(0.45) + 0.015 x 0.05^(2/3) = 0.004542.
    const found = unifiedThread({ majorIn: 1, tpi: 20, series: 'other' });
    expect(found.pitchTolerance2AIn).toBeCloseTo(0.0045421, 6);
  });

  it.each([
    { majorIn: 1, tpi: 3 },
    { majorIn: 0.05, tpi: 20 },
    { majorIn: NaN, tpi: 20 },
  ])('refuses %o', (size) => {
    expect(() => unifiedThread({ ...size, series: 'UNC' })).toThrow(
      expect.objectContaining({ code: 'unified-thread/size' }),
    );
  });
});
