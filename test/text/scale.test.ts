import { describe, expect, it } from 'vitest';
import { scaleWords } from '@/lib/text/scale';

describe('scaleWords', () => {
  it.each([
    // 43.6 px of 1/96 in to 0.001 mm: 43.6 x 25.4 / 96 / 0.001 = 11 536.
    [11_536, '11\u00a0500 times full size'],
    [1_234_567, '1\u00a0230\u00a0000 times full size'],
    [9.04, '9.04 times full size'],
    [999.6, '1\u00a0000 times full size'],
    [1.0004, 'full size'],
    [0.1, '1 : 10'],
  ])('says %f to three figures', (times, words) => {
    expect(scaleWords(times)).toBe(words);
  });
});
