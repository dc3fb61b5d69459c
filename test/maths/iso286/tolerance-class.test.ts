import { describe, expect, it } from 'vitest';
import { toleranceClass } from '@/lib/maths/iso286/tolerance-class';

describe('toleranceClass', () => {
  it('takes capitals for holes, small letters for shafts, and does not mind blanks', () => {
    expect(toleranceClass(' ZC8 ')).toEqual({
      side: 'internal',
      letters: 'zc',
      grade: 'IT8',
      text: 'ZC8',
    });
    expect(toleranceClass('js01').grade).toBe('IT01');
  });

  it.each(['', 'H', '7', 'H19', 'Js7', 'i6', 'l6', 'o6', 'q6', 'w6', 'j56', 'H7/g6', 'H 7', 'ab6'])(
    'refuses %j',
    (typed) => {
      expect(() => toleranceClass(typed)).toThrow(
        expect.objectContaining({ code: 'tolerance-class/text' }),
      );
    },
  );
});
