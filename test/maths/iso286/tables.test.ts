import { describe, expect, it } from 'vitest';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { itGrade } from '@/lib/maths/iso286/it-grade';
import {
  deviationUpToMm,
  gradeNames,
  shaftDeviationUm,
  toleranceUm,
  toleranceUpToMm,
} from '@/lib/maths/iso286/tables';

// The formulas of ISO 286-1 annex A (1988 edition) generated the tables, which were then rounded:
// a slipped digit in a cell shows as a large departure from them.
const lower = [0, ...toleranceUpToMm.slice(0, -1)];
const middleMm = (over: number, upTo: number) =>
  over === 0 ? Math.sqrt(3) : Math.sqrt(over * upTo);

describe('table of standard tolerances', () => {
  it('follows i = 0.45 D^(1/3) + 0.001 D within 3 % and rounding for IT5 to IT11 over 10 to 500 mm', () => {
    const multiples = { IT5: 7, IT6: 10, IT7: 16, IT8: 25, IT9: 40, IT10: 64, IT11: 100 } as const;
    toleranceUpToMm.forEach((upTo, r) => {
      if (upTo <= 10 || upTo > 500) return;
      const D = middleMm(lower[r]!, upTo);
      const unit = 0.45 * Math.cbrt(D) + 0.001 * D;
      for (const [grade, multiple] of Object.entries(multiples)) {
        const table = itGrade(grade as 'IT5', upTo);
        const off = Math.abs(table - multiple * unit);
        // Half a micrometre is the rounding of the small cells; the large ones were rounded by 3 %.
        expect(off, `${grade} to ${upTo}`).toBeLessThan(0.5 + 0.03 * table);
      }
    });
  });

  it('follows I = 0.004 D + 2.1 within 5 % for IT6 to IT11 over 500 mm', () => {
    // 5 %: the rounding steps of 5 and 10 um are up to 4.3 % of the smallest of these cells.
    const multiples = { IT6: 10, IT7: 16, IT8: 25, IT9: 40, IT10: 64, IT11: 100 } as const;
    toleranceUpToMm.forEach((upTo, r) => {
      if (upTo <= 500) return;
      const unit = 0.004 * middleMm(lower[r]!, upTo) + 2.1;
      for (const [grade, multiple] of Object.entries(multiples)) {
        const table = itGrade(grade as 'IT6', upTo);
        expect(Math.abs(table / (multiple * unit) - 1), `${grade} to ${upTo}`).toBeLessThan(0.05);
      }
    });
  });

  it('grows ten times every five grades from IT6, with one exception', () => {
    const exceptions: string[] = [];
    toleranceUm.forEach((row, r) => {
      for (let c = gradeNames.indexOf('IT6'); c + 5 < gradeNames.length; c += 1) {
        if (row[c + 5] !== row[c]! * 10)
          exceptions.push(`${gradeNames[c]} to ${toleranceUpToMm[r]}`);
      }
    });
    expect(exceptions).toEqual(['IT6 to 6']);
  });

  it('has a cell for every grade but IT01 and IT0 over 500 mm, growing with grade and size', () => {
    toleranceUm.forEach((row, r) => {
      expect(row).toHaveLength(gradeNames.length);
      row.forEach((cell, c) => {
        if (toleranceUpToMm[r]! > 500 && c < 2) return expect(cell).toBeUndefined();
        if (c > 0 && row[c - 1] !== undefined) expect(cell).toBeGreaterThan(row[c - 1]!);
        if (r > 0) expect(cell).toBeGreaterThanOrEqual(toleranceUm[r - 1]![c] ?? 0);
      });
    });
  });
});

describe('table of fundamental deviations', () => {
  const ranges = deviationUpToMm.map((upTo, i) => [deviationUpToMm[i - 1] ?? 0, upTo] as const);

  /** Cells of a letter with their formula values over a span of sizes. */
  const cells = (letter: string, over: number, upTo: number, formula: (D: number) => number) =>
    ranges.flatMap(([from, to], i) => {
      const table = shaftDeviationUm[letter]![i];
      if (from < over || to > upTo || table === undefined) return [];
      return [{ table, formula: formula(middleMm(from, to)), name: `${letter} to ${to}` }];
    });

  // The table keeps one value over pairs or triples of ranges for d to g, m to p, so D of one part
  // differs from D of the whole: 12 % covers that and the rounding; s to zc have their own D.
  it.each([
    ['a', 120, 500, (D: number) => -3.5 * D, 0.03],
    ['a', 6, 120, (D: number) => -(265 + 1.3 * D), 0.04],
    ['b', 160, 500, (D: number) => -1.8 * D, 0.03],
    ['c', 40, 500, (D: number) => -(95 + 0.8 * D), 0.03],
    ['d', 10, 3150, (D: number) => -16 * D ** 0.44, 0.1],
    ['e', 10, 3150, (D: number) => -11 * D ** 0.41, 0.1],
    ['f', 10, 3150, (D: number) => -5.5 * D ** 0.41, 0.1],
    ['g', 18, 3150, (D: number) => -2.5 * D ** 0.34, 0.12],
    ['n', 10, 500, (D: number) => 5 * D ** 0.34, 0.12],
    ['m', 500, 3150, (D: number) => 0.024 * D + 12.6, 0.12],
    ['n', 500, 3150, (D: number) => 0.04 * D + 21, 0.12],
    ['p', 500, 3150, (D: number) => 0.072 * D + 37.8, 0.12],
  ])('follows the formula of %s over %d to %d mm', (letter, over, upTo, formula, part) => {
    const found = cells(letter, over, upTo, formula);
    expect(found.length).toBeGreaterThan(5);
    for (const one of found) {
      expect(Math.abs(one.table / one.formula - 1), one.name).toBeLessThan(part);
    }
  });

  it.each([
    ['s', 0.4, 'IT7', 50, 3150],
    ['t', 0.63, 'IT7', 24, 3150],
    ['u', 1, 'IT7', 18, 3150],
    ['v', 1.25, 'IT7', 14, 500],
    ['x', 1.6, 'IT7', 10, 500],
    ['y', 2, 'IT7', 18, 500],
    ['z', 2.5, 'IT7', 10, 500],
    ['za', 3.15, 'IT8', 10, 500],
    ['zb', 4, 'IT9', 10, 500],
    ['zc', 5, 'IT10', 10, 500],
  ] as const)('follows %s = %d D + %s over %d to %d mm', (letter, times, grade, over, upTo) => {
    const found = cells(letter, over, upTo, (D) => itGrade(grade, D) + times * D);
    expect(found.length).toBeGreaterThan(10);
    // 5 %: cells are rounded to 1, 5, 10, 50 or 100 um by size. To 30 mm the standard smoothed the
    // small values upwards, by 3.1 um at most (t, x): 3.5 um is allowed there.
    for (const one of found) {
      const off = Math.abs(one.table - one.formula);
      expect(off, one.name).toBeLessThan(Math.max(3.5, 0.05 * one.formula));
    }
  });

  it('puts p of every range at IT7 or up to 5 um above it, to 500 mm', () => {
    ranges.forEach(([, upTo], i) => {
      if (upTo > 500 || upTo <= 3) return;
      const above = shaftDeviationUm.p![i]! - itGrade('IT7', upTo);
      expect(above >= 0 && above <= 5, `p to ${upTo}: ${above}`).toBe(true);
    });
  });

  it('puts m at IT7 less IT6 within a micrometre, to 500 mm', () => {
    ranges.forEach(([, upTo], i) => {
      if (upTo > 500 || upTo <= 3) return;
      const rule = itGrade('IT7', upTo) - itGrade('IT6', upTo);
      expect(Math.abs(shaftDeviationUm.m![i]! - rule), `m to ${upTo}`).toBeLessThanOrEqual(1);
    });
  });

  it('keeps the letters in order at every size', () => {
    const clearance = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];
    const tight = [
      'h',
      'k',
      'm',
      'n',
      'p',
      'r',
      's',
      't',
      'u',
      'v',
      'x',
      'y',
      'z',
      'za',
      'zb',
      'zc',
    ];
    ranges.forEach(([, upTo], i) => {
      for (const letters of [clearance, tight]) {
        const row = letters
          .map((name) => shaftDeviationUm[name]![i])
          .filter((v) => v !== undefined);
        expect(row, `to ${upTo}`).toEqual(row.toSorted((a, b) => a - b));
      }
    });
  });

  it('gives J its place between H and K in every grade', () => {
    for (const upTo of deviationUpToMm.filter((size) => size > 3 && size <= 500)) {
      for (const grade of [6, 7, 8]) {
        const J = classLimits(`J${grade}`, upTo).upperUm;
        expect(J).toBeLessThan(classLimits(`H${grade}`, upTo).upperUm);
        expect(J).toBeGreaterThanOrEqual(classLimits(`K${grade}`, upTo).upperUm);
      }
    }
  });
});
