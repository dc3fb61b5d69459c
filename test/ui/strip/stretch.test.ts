import { describe, expect, it } from 'vitest';
import { about, clipped, merged, tooClose, without } from '@/app/ui/strip/stretch';

const stretch = (from: number, to: number) => ({ from, to });

describe('stretches of a line', () => {
  it('stand about their middle', () => {
    expect(about(100, 17)).toEqual(stretch(91.5, 108.5));
  });

  it('are clipped to the width, and gone where nothing is left', () => {
    expect(clipped(stretch(-5, 500), 358)).toEqual(stretch(0, 358));
    expect(clipped(stretch(400, 500), 358)).toBeNull();
    expect(clipped(stretch(-9, 0), 358)).toBeNull();
  });

  it('are too close when less than the gap is between them, on either side', () => {
    expect(tooClose(stretch(0, 10), stretch(16, 20), 6)).toBe(false);
    expect(tooClose(stretch(0, 10), stretch(15.9, 20), 6)).toBe(true);
    expect(tooClose(stretch(15.9, 20), stretch(0, 10), 6)).toBe(true);
  });

  it('merge where they meet, also where one lies within another', () => {
    expect(merged([stretch(20, 30), stretch(0, 10), stretch(10, 12)])).toEqual([
      stretch(0, 12),
      stretch(20, 30),
    ]);
    expect(merged([stretch(0, 30), stretch(5, 10)])).toEqual([stretch(0, 30)]);
  });

  it('are what is left between gaps', () => {
    expect(without(stretch(0, 100), [stretch(40, 60), stretch(90, 120)])).toEqual([
      stretch(0, 40),
      stretch(60, 90),
    ]);
    expect(without(stretch(0, 100), [stretch(-10, 5)])).toEqual([stretch(5, 100)]);
    expect(without(stretch(0, 100), [stretch(0, 100)])).toEqual([]);
  });
});
