import { describe, expect, it } from 'vitest';
import { lastPieceFromMeasured } from '@/lib/maths/chain/last-piece-from-measured';

describe('lastPieceFromMeasured', () => {
  const measured = [
    { coefficient: 1, size: 48.216, U: 0.004 },
    { coefficient: -1, size: 48.066, U: 0.003 },
  ];

  it('takes what the measured pieces leave of the aim', () => {
    // By hand: 0.150 less the last is 0.1: 0.050; limits 0.15 - 0.15 = 0 to 0.15 - 0.05 = 0.1;
    // U = 0.005 off both.
    const found = lastPieceFromMeasured(measured, {
      coefficient: -1,
      aim: 0.1,
      closing: { least: 0.05, most: 0.15 },
    });
    expect(found.sumOfMeasured).toBeCloseTo(0.15, 10);
    expect(found.U).toBeCloseTo(0.005, 12);
    expect(found.target).toBeCloseTo(0.05, 10);
    expect(found.limits.least).toBeCloseTo(0, 10);
    expect(found.limits.most).toBeCloseTo(0.1, 10);
    expect(found.working).toMatchObject({
      kind: 'band',
      least: expect.closeTo(0.005, 10),
      most: expect.closeTo(0.095, 10),
    });
  });

  it('shares the doubt out where the last piece counts twice', () => {
    const found = lastPieceFromMeasured(measured, {
      coefficient: 2,
      aim: 1,
      closing: { least: 0.9, most: 1.1 },
    });
    expect(found.target).toBeCloseTo(0.425, 10);
    expect(found.working).toMatchObject({ least: expect.closeTo(0.3775, 10) });
  });

  it('says by how much the limits are narrower than the doubt', () => {
    const found = lastPieceFromMeasured(measured, {
      coefficient: 1,
      aim: 1,
      closing: { least: 0.997, most: 1.003 },
    });
    expect(found.working).toEqual({ kind: 'none', wanting: expect.closeTo(0.004, 10) });
  });

  it('takes a closing link of one size', () => {
    const known = [{ coefficient: 1, size: 10, U: 0 }];
    const exact = { coefficient: 1, aim: 12, closing: { least: 12, most: 12 } };
    expect(lastPieceFromMeasured(known, exact).working).toEqual({
      kind: 'band',
      least: 2,
      most: 2,
    });
  });

  const last = { coefficient: 1, aim: 1, closing: { least: 0.9, most: 1.1 } };
  it.each([
    ['last-piece-from-measured/no-link', [], last],
    ['last-piece-from-measured/link', [{ coefficient: 1, size: 1, U: -1 }], last],
    ['last-piece-from-measured/link', [{ coefficient: 0, size: 1, U: 1 }], last],
    ['last-piece-from-measured/limits', measured, { ...last, closing: { least: 2, most: 1 } }],
    ['last-piece-from-measured/aim', measured, { ...last, coefficient: 0 }],
    ['last-piece-from-measured/aim', measured, { ...last, aim: NaN }],
  ])('refuses by %s', (code, chain, wanted) => {
    expect(() => lastPieceFromMeasured(chain, wanted)).toThrow(expect.objectContaining({ code }));
  });
});
