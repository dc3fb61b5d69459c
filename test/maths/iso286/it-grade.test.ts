import { describe, expect, it } from 'vitest';
import { itGrade } from '@/lib/maths/iso286/it-grade';

describe('itGrade', () => {
  it('refuses a grade that does not exist', () => {
    expect(() => itGrade('IT19' as 'IT18', 25)).toThrow(
      expect.objectContaining({ code: 'it-grade/grade' }),
    );
  });

  it('uses IT14 just over 1 mm and not at 1 mm', () => {
    expect(itGrade('IT14', 1.001)).toBe(250);
    expect(() => itGrade('IT14', 1)).toThrow(
      expect.objectContaining({ code: 'it-grade/not-used' }),
    );
    expect(itGrade('IT13', 1)).toBe(140);
  });
});
