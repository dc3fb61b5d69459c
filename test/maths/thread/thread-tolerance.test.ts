import { describe, expect, it } from 'vitest';
import { byPitch, pitchDiameter } from '@/lib/maths/thread/iso965-tables';
import { threadTolerance } from '@/lib/maths/thread/thread-tolerance';

describe('threadTolerance', () => {
  it('agrees with the printed rows of pitch-diameter tolerances, every grade', () => {
    // Machinery's Handbook 31st ed., Tables 10 and 11 (ISO 965/1, ASME B1.13M), read on a page copy.
    const external: Record<string, number[]> = {
      '2 0.45': [36, 45, 56, 71, 90],
      '5 0.5': [38, 48, 60, 75, 95],
      '5 0.8': [48, 60, 75, 95, 118, 150, 190],
      '8 0.75': [50, 63, 80, 100, 125],
      '8 1': [56, 71, 90, 112, 140, 180, 224],
      '10 1.5': [67, 85, 106, 132, 170, 212, 265],
      '20 2.5': [85, 106, 132, 170, 212, 265, 335],
      '30 3': [100, 125, 160, 200, 250],
    };
    for (const [name, row] of Object.entries(external)) {
      const [d, P] = name.split(' ').map(Number) as [number, number];
      row.forEach((um, i) => expect(threadTolerance('external-pitch', i + 3, d, P), name).toBe(um));
    }
    const internal: Record<string, number[]> = {
      '100 2': [160, 200, 250, 315, 400],
      '100 3': [190, 236, 300, 375, 475],
      '100 4': [212, 265, 335, 425, 530],
      '100 6': [250, 315, 400, 500, 630],
      '100 8': [280, 355, 450, 560, 710],
      '200 3': [212, 265, 335, 425, 530],
      '200 4': [236, 300, 375, 475, 600],
      '200 6': [265, 335, 425, 530, 670],
      '200 8': [300, 375, 475, 600, 750],
    };
    for (const [name, row] of Object.entries(internal)) {
      const [d, P] = name.split(' ').map(Number) as [number, number];
      row.forEach((um, i) => expect(threadTolerance('internal-pitch', i + 4, d, P), name).toBe(um));
    }
  });

  it('gives the crest tolerances of other grades as printed', () => {
    // ISO 965-1 tables 2 and 3, from memory: TD1 at 1 mm 150, 190, 236, 300, 375; Td at 1 mm 112,
    // 180, 280.
    const minor = [4, 5, 6, 7, 8].map((g) => threadTolerance('internal-minor', g, 8, 1));
    expect(minor).toEqual([150, 190, 236, 300, 375]);
    const major = [4, 6, 8].map((g) => threadTolerance('external-major', g, 8, 1));
    expect(major).toEqual([112, 180, 280]);
  });

  // The formulas of ISO 965-1, before the rounding to the R 40 series. One step of the series is 6 %,
  // half of it 3 %; cells that the standard smoothed are off by up to 5.5 %.
  const rounding = 0.055;

  it('keeps every crest cell within a rounding of its formula', () => {
    for (const { pitchMm: P, majorUm, minorUm } of byPitch) {
      const major = 180 * Math.cbrt(P) ** 2 - 3.15 / Math.sqrt(P);
      const minor = P < 1 ? 433 * P - 190 * P ** 1.22 : 230 * P ** 0.7;
      expect(Math.abs(majorUm / major - 1), `Td ${P}`).toBeLessThan(rounding);
      expect(Math.abs(minorUm / minor - 1), `TD1 ${P}`).toBeLessThan(rounding);
    }
  });

  it('keeps every pitch-diameter cell within a rounding of its formula', () => {
    for (const { overMm, upToMm, pitchMm: P, externalUm, internalUm } of pitchDiameter) {
      const external = 90 * P ** 0.4 * Math.sqrt(overMm * upToMm) ** 0.1;
      expect(Math.abs(externalUm / external - 1), `Td2 ${upToMm} x ${P}`).toBeLessThan(rounding);
      expect(Math.abs(internalUm / (1.32 * external) - 1), `TD2 ${upToMm} x ${P}`).toBeLessThan(
        rounding,
      );
    }
  });

  it('keeps every deviation within a rounding of its formula', () => {
    for (const { pitchMm: P, eUm, fUm, gUm } of byPitch) {
      // 15, 30 and 50 + 11 P, in whole micrometres; f and e below 1 mm were smoothed by up to 5.5 um.
      expect(Math.abs(gUm - (15 + 11 * P)), `g ${P}`).toBeLessThan(3.1);
      expect(Math.abs(fUm - (30 + 11 * P)), `f ${P}`).toBeLessThan(3.1);
      if (eUm !== undefined) expect(Math.abs(eUm - (50 + 11 * P)), `e ${P}`).toBeLessThan(6);
    }
  });

  it('puts a size on the edge of two ranges into the lower one', () => {
    // 22.4 is the end of 11.2 to 22.4 (ISO 965-1 table 5): 118 and not 125.
    expect(threadTolerance('external-pitch', 6, 22.4, 1)).toBe(118);
    expect(threadTolerance('external-pitch', 6, 22.5, 1)).toBe(125);
    expect(threadTolerance('internal-minor', 7, 3, 0.5)).toBe(180);
  });

  it.each([
    ['thread-tolerance/grade', ['external-major', 5, 10, 1.5]],
    ['thread-tolerance/grade', ['internal-pitch', 9, 10, 1.5]],
    ['thread-tolerance/grade', ['external-pitch', 8, 3, 0.5]],
    ['thread-tolerance/grade', ['internal-minor', 7, 2, 0.4]],
    ['thread-tolerance/grade', ['external-pitch', 6.5, 10, 1.5]],
    ['thread-tolerance/pitch', ['external-major', 6, 10, 1.1]],
    ['thread-tolerance/size', ['external-pitch', 6, 10, 3]],
    ['thread-tolerance/size', ['internal-pitch', 6, 400, 6]],
  ] as const)('refuses by %s', (code, [diameter, grade, d, P]) => {
    expect(() => threadTolerance(diameter, grade, d, P)).toThrow(expect.objectContaining({ code }));
  });
});
