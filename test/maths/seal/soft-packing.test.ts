import { describe, expect, it } from 'vitest';
import { softPacking } from '@/lib/maths/seal/soft-packing';

describe('softPacking', () => {
  const box = { rodMm: 16, boxBoreMm: 28, boxDepthMm: 36, rings: 5, compressionPercent: 15 };

  it('cuts rings to the mean round of the box', () => {
    // By hand: section 6, mean diameter 22, five rings 30 high, 25.5 pulled up, 6 of entry left.
    const found = softPacking(box);
    expect(found.sectionMm).toBe(6);
    expect(found.cutLengthMm).toBeCloseTo(22 * Math.PI, 12);
    expect(found.stackMm).toBe(30);
    expect(found.stackCompressedMm).toBe(25.5);
    expect(found.glandEntryLeftMm).toBe(6);
    expect(softPacking({ ...box, rings: 7 }).glandEntryLeftMm).toBe(-6);
  });

  it('packs a single ring', () => {
    expect(softPacking({ ...box, rings: 1 }).stackMm).toBe(6);
  });

  it.each([
    ['soft-packing/length', { rodMm: 0 }],
    ['soft-packing/order', { boxBoreMm: 16 }],
    ['soft-packing/rings', { rings: 2.5 }],
    ['soft-packing/rings', { rings: 0 }],
    ['soft-packing/compression', { compressionPercent: 100 }],
    ['soft-packing/compression', { compressionPercent: -1 }],
  ])('refuses by %s', (code, part) => {
    expect(() => softPacking({ ...box, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
