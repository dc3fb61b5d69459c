import { describe, expect, it } from 'vitest';
import { fundamentalDeviation } from '@/lib/maths/iso286/fundamental-deviation';
import { toleranceClass } from '@/lib/maths/iso286/tolerance-class';

describe('fundamentalDeviation', () => {
  it('says which limit lies nearest the nominal', () => {
    const limitOf = (text: string) => fundamentalDeviation(toleranceClass(text), 25).limit;
    expect(['g6', 'h6', 'n6', 'G7', 'H7', 'N7'].map(limitOf)).toEqual([
      'upper',
      'upper',
      'lower',
      'lower',
      'lower',
      'upper',
    ]);
  });

  it('refuses js, which has none, and sizes outside the standard', () => {
    expect(() => fundamentalDeviation(toleranceClass('js6'), 25)).toThrow(
      expect.objectContaining({ code: 'fundamental-deviation/not-defined' }),
    );
    expect(() => fundamentalDeviation(toleranceClass('h6'), 4000)).toThrow(
      expect.objectContaining({ code: 'fundamental-deviation/size' }),
    );
  });
});
