import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseFormula } from '@/lib/maths/derived/formula';

const value = (text: string, known: Record<string, number> = {}) => {
  const { names, evaluate } = parseFormula(text);
  return evaluate(names.map((name) => known[name]!));
};

describe('parseFormula', () => {
  // Worked by hand by the usual order of operations.
  it.each([
    ['1 + 2 * 3', 7],
    ['(1 + 2) * 3', 9],
    ['8 - 3 - 2', 3],
    ['8 / 4 / 2', 1],
    ['2^3^2', 512],
    ['-2^2', -4],
    ['(-2)^2', 4],
    ['2^-1', 0.5],
    ['2 * -3', -6],
    ['4 - -1', 5],
    ['- - 3', 3],
    ['+3', 3],
    ['.5 + 1.25', 1.75],
    ['sqrt(16) abs(-2)', 8],
    ['2 pi', 2 * Math.PI],
    ['6 / (2 3)', 1],
    ['atan(1) in degrees', 45],
    ['y = 1 + 1', 2],
  ])('works %s out as %d', (text, wanted) => {
    expect(value(text)).toBeCloseTo(wanted, 12);
  });

  it('multiplies what stands side by side', () => {
    expect(value('2 a b', { a: 3, b: 5 })).toBe(30);
    expect(value('a (b + 1)', { a: 3, b: 5 })).toBe(18);
    expect(value('(a + 1)(b + 1)', { a: 3, b: 5 })).toBe(24);
    expect(value('2a^2', { a: 3 })).toBe(18);
  });

  it('names what it is of in the order of first standing', () => {
    expect(parseFormula('s - (d1 + d2)/2 + s').names).toEqual(['s', 'd1', 'd2']);
    expect(parseFormula('c/sin(pi/n), n = 6').names).toEqual(['c']);
  });

  it('takes a name in degrees, a constant and a result in degrees', () => {
    expect(value('sin(a), a in degrees', { a: 30 })).toBeCloseTo(0.5, 12);
    expect(value('c/sin(pi/n), n = 6', { c: 22 })).toBeCloseTo(44, 12);
    expect(value('phi = acos((a + c)/(e - c)) in degrees', { a: 0, c: 1, e: 3 })).toBeCloseTo(
      60,
      10,
    );
    expect(value('a x, a in degrees, x = -2', { a: 180 })).toBeCloseTo(-2 * Math.PI, 12);
  });

  it('refuses a product after a division that could be read in two ways', () => {
    for (const text of ['1/2 x', 'a/b c', 'a/(b) (c)', '1/2 pi']) {
      expect(() => parseFormula(text)).toThrow(
        expect.objectContaining({ code: 'formula/ambiguous' }),
      );
    }
    expect(value('a/2 * b', { a: 4, b: 3 })).toBe(6);
    expect(value('x y/2', { x: 4, y: 3 })).toBe(6);
  });

  it.each([
    '',
    '1 +',
    '(1',
    '1)',
    '* 2',
    'sin 3',
    'sin',
    'a ; b',
    'a = b = c',
    '1 , 2',
    'a, b = 3',
    'a, b in degrees',
    'a, a = x',
    '2..3',
    'constructor("x")',
    `${'('.repeat(60)}1${')'.repeat(60)}`,
    'a'.repeat(201),
  ])('refuses %j', (text) => {
    expect(() => parseFormula(text)).toThrow(expect.objectContaining({ code: 'formula/text' }));
  });

  it('knows no name that was not given, whatever it is called', () => {
    expect(value('constructor + toString', { constructor: 1, toString: 2 })).toBe(3);
    expect(Number.isNaN(parseFormula('hasOwnProperty').evaluate([]))).toBe(true);
  });

  it('agrees with the arithmetic of the language for any tree of operations', () => {
    const leaf = fc.integer({ min: 1, max: 9 }).map((n) => ({ text: String(n), value: n }));
    type Tree = { text: string; value: number };
    const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
      tree: fc.oneof(
        { maxDepth: 4 },
        leaf,
        fc
          .tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/'), tie('tree'))
          .map(([a, sign, b]) => ({
            text: `(${a.text} ${sign} ${b.text})`,
            value:
              { '+': a.value + b.value, '-': a.value - b.value, '*': a.value * b.value }[
                sign as '+'
              ] ?? a.value / b.value,
          })),
      ),
    }));
    fc.assert(
      fc.property(tree, (one) => {
        if (one.text.length > 200) return;
        expect(value(one.text)).toBe(one.value);
      }),
    );
  });
});
