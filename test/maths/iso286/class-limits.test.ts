import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { classLimits } from '@/lib/maths/iso286/class-limits';
import { itGrade } from '@/lib/maths/iso286/it-grade';

const limits = (text: string, sizeMm: number) => {
  const { upperUm, lowerUm } = classLimits(text, sizeMm);
  return [upperUm, lowerUm];
};

describe('classLimits', () => {
  // ISO 286-2 limit deviations at 25 mm, from memory of the standard; whole micrometres, exact.
  it.each([
    ['H7', 21, 0],
    ['H8', 33, 0],
    ['F8', 53, 20],
    ['K7', 6, -15],
    ['M7', 0, -21],
    ['N7', -7, -28],
    ['N9', 0, -52],
    ['P7', -14, -35],
    ['P9', -22, -74],
    ['S7', -27, -48],
    ['J7', 12, -9],
    ['JS9', 26, -26],
    ['g6', -7, -20],
    ['f7', -20, -41],
    ['h6', 0, -13],
    ['j6', 9, -4],
    ['js6', 6.5, -6.5],
    ['k6', 15, 2],
    ['k8', 33, 0],
    ['m6', 21, 8],
    ['n6', 28, 15],
    ['p6', 35, 22],
    ['s6', 48, 35],
    ['zc8', 251, 218],
  ])('gives %s at 25 mm as +%d and %d', (text, upper, lower) => {
    expect(limits(text, 25)).toEqual([upper, lower]);
  });

  it('puts a size on the edge of two ranges into the lower one', () => {
    expect(limits('H7', 30)).toEqual([21, 0]);
    expect(limits('H7', 30.0001)).toEqual([25, 0]);
  });

  it('splits the ranges finer for the deviations than for the tolerances', () => {
    // ISO 286-1: u is 41 over 18 to 24 mm and 48 over 24 to 30 mm, IT6 is 13 over both.
    expect(limits('u6', 24)).toEqual([54, 41]);
    expect(limits('u6', 24.1)).toEqual([61, 48]);
  });

  it('takes M6 from 250 to 315 mm as the standard words it, not by the rule', () => {
    expect(limits('M6', 300)).toEqual([-9, -41]);
    expect(limits('M6', 250)).toEqual([-8, -37]);
    expect(limits('M6', 316)).toEqual([-10, -46]);
  });

  it('gives no correction to holes up to 3 mm or over 500 mm', () => {
    expect(limits('P7', 3)).toEqual([-6, -16]);
    expect(limits('P7', 600)).toEqual([-78, -148]);
    expect(limits('K7', 600)).toEqual([0, -70]);
  });

  it('mirrors hole and shaft of the same letters where no correction applies', () => {
    const letters = fc.constantFrom('a', 'c', 'd', 'e', 'f', 'g', 'h');
    fc.assert(
      fc.property(
        letters,
        fc.integer({ min: 5, max: 11 }),
        fc.double({ min: 1.1, max: 500, noNaN: true }),
        (name, grade, sizeMm) => {
          const [up, low] = limits(`${name}${grade}`, sizeMm);
          const [holeUp, holeLow] = limits(`${name.toUpperCase()}${grade}`, sizeMm);
          expect([holeUp! + low!, holeLow! + up!]).toEqual([0, 0]);
        },
      ),
    );
  });

  it('gives H7/p6 and P7/h6 the same clearances, which is what the correction is for', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('k', 'm', 'n', 'p', 'r', 's'),
        fc.double({ min: 3.1, max: 500, noNaN: true }),
        (name, sizeMm) => {
          const [hole, shaft] = [classLimits('H7', sizeMm), classLimits(`${name}6`, sizeMm)];
          const upper = name.toUpperCase();
          const [other, plain] = [classLimits(`${upper}7`, sizeMm), classLimits('h6', sizeMm)];
          expect(other.upperUm - plain.lowerUm).toBe(hole.upperUm - shaft.lowerUm);
          expect(other.lowerUm - plain.upperUm).toBe(hole.lowerUm - shaft.upperUm);
        },
      ),
    );
  });

  it('keeps the limits one standard tolerance apart', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('H', 'D', 'JS', 'K', 'P', 'h', 'd', 'js', 'k', 'p', 'u'),
        fc.integer({ min: 6, max: 8 }),
        fc.double({ min: 1.1, max: 3150, noNaN: true }),
        (letters, grade, sizeMm) => {
          const { upperUm, lowerUm } = classLimits(`${letters}${grade}`, sizeMm);
          expect(upperUm - lowerUm).toBe(itGrade(`IT${grade}` as 'IT6', sizeMm));
        },
      ),
    );
  });

  it.each([
    ['a9', 0.8],
    ['B9', 1],
    ['N9', 1],
    ['j8', 4],
    ['j9', 25],
    ['J5', 25],
    ['K9', 25],
    ['t6', 20],
    ['v6', 12],
    ['cd6', 12],
    ['P2', 25],
    ['H5', 600],
    ['k17', 600],
    ['a11', 600],
  ])('refuses %s at %d mm, which the standard does not define', (text, sizeMm) => {
    expect(() => classLimits(text, sizeMm)).toThrow(
      expect.objectContaining({ code: 'fundamental-deviation/not-defined' }),
    );
  });

  it.each([
    ['H15', 0.9, 'it-grade/not-used'],
    ['h01', 501, 'it-grade/not-used'],
    ['H7', 0, 'it-grade/size'],
    ['H7', -5, 'it-grade/size'],
    ['H7', 3151, 'it-grade/size'],
    ['H7', NaN, 'it-grade/size'],
  ])('refuses %s at %d mm by %s', (text, sizeMm, code) => {
    expect(() => classLimits(text, sizeMm)).toThrow(expect.objectContaining({ code }));
  });

  it('corrects P to grade 7 only, and K, M and N to grade 8', () => {
    // ISO 286-1 at 25 mm: P base -22, delta 8 at grade 7; N base -15, delta 12 at grade 8.
    expect(limits('P8', 25)).toEqual([-22, -55]);
    expect(limits('N8', 25)).toEqual([-3, -36]);
    expect(limits('M9', 25)).toEqual([-8, -60]);
  });

  it('uses up to 1 mm what the standard does not leave out there', () => {
    expect(limits('N8', 1)).toEqual([-4, -18]);
    expect(limits('C9', 1)).toEqual([85, 60]);
    expect(limits('n9', 1)).toEqual([29, 4]);
    expect(limits('a9', 1.01)).toEqual([-270, -295]);
  });

  it('ends where the standard ends', () => {
    expect(limits('k16', 600)).toEqual([4400, 0]);
    expect(limits('h5', 500)).toEqual([0, -27]);
    expect(limits('u7', 3150)).toEqual([3410, 3200]);
    expect(() => limits('d5', 500.1)).toThrow();
  });

  it('knows the uncommon grades of common letters', () => {
    expect(limits('k3', 25)).toEqual([4, 0]);
    expect(limits('H18', 600)).toEqual([11000, 0]);
    expect(limits('js01', 25)).toEqual([0.3, -0.3]);
    expect(limits('js2', 600)).toEqual([5.5, -5.5]);
    expect(limits('N9', 2)).toEqual([-4, -29]);
    expect(limits('K9', 2)).toEqual([0, -25]);
    expect(limits('P3', 25)).toEqual([-20.5, -24.5]);
  });
});
