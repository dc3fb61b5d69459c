import { describe, expect, it } from 'vitest';
import { exactFigure } from '@/lib/text/exact-figure';

const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: ',' } as const;

describe('exactFigure', () => {
  it.each([
    [8_000_000, mm, 0, '0.008'],
    [8_000_000, mm, 4, '0.0080'],
    [7_620_000, mm, 3, '0.00762'],
    [1, mm, 0, '0.000000001'],
    [18_000_000_000, mm, 0, '18'],
    [20_000_000_000, mm, 3, '20.000'],
    [-2_500_000, mm, 3, '\u22120.0025'],
    [0, mm, 3, '0.000'],
    [25_400_000, inch, 0, '0,001'],
    [25_400, inch, 0, '0,000001'],
    [25, inch, 0, '0'],
    // 0.008 / 25.4 = 0.00031496..., by hand
    [8_000_000, inch, 4, '0,000315'],
    [10_000_000, inch, 0, '0,0003937'],
  ] as const)('says %d with every digit it has', (pm, shown, least, text) => {
    expect(exactFigure(pm, shown, least)).toBe(text);
  });
});
