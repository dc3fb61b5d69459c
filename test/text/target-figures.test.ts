import { describe, expect, it } from 'vitest';
import { targetFigures } from '@/lib/text/target-figures';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const inch = { unit: 'in', decimal: '.' } as const;
const thou = 25_400_000;

/** About 18 mm, in micrometres from it. */
function about18(target: number, smallest: number, largest: number, resolutionPm = um, shown = mm) {
  const at = (microns: number) => Math.round((18_000 + microns) * um);
  const sizes = { targetPm: at(target), noSmallerPm: at(smallest), noLargerPm: at(largest) };
  return Object.values(targetFigures(sizes, resolutionPm, shown));
}

describe('a target with its working limits', () => {
  it.each([
    ['has the place of the gauge, its limits rounded inward', [0, -1.4, 1.4], ['18.000', '18.001', '17.999']],
    ['keeps a limit that is exact', [0, -2, 2], ['18.000', '18.002', '17.998']],
    ['has a place more where two steps have no room', [-1.5, -1.93, -1.07], ['17.9985', '17.9989', '17.9981']],
    ['never reads as smaller than its smallest', [-1.7, -1.9, 1.4], ['17.999', '18.001', '17.999']],
    ['never reads as larger than its largest', [1.7, -1.4, 1.9], ['18.001', '18.001', '17.999']],
    ['keeps the place of the gauge where only its limits want more', [0.2, -0.8, 0.7], ['18.000', '18.0007', '17.9992']],
    ['has it where that place is past them', [0.6, 0.2, 0.9], ['18.0006', '18.0009', '18.0002']],
    ['has no more where one tenth has room', [0, -0.06, 0.06], ['18.000', '18.0000', '18.0000']],
    ['has two more where a tenth has none', [-1.53, -1.55, -1.51], ['17.99847', '17.99849', '17.99845']],
    ['does so in the place more too', [-1.93, -1.93, -1.07], ['17.9981', '17.9989', '17.9981']],
    ['has the place of the gauge where it is outside its limits in truth', [-3, -1.9, 1.4], ['17.997', '18.001', '17.999']],
    ['has the place of the gauge where its limits cross', [0, 0.4, -0.4], ['18.000', '17.999', '18.001']],
  ] as const)('%s', (_, [target, smallest, largest], figures) => {
    expect(about18(target, smallest, largest)).toEqual(figures);
  }); // prettier-ignore

  it('stops at the steps of a gauge that shows every fifth', () => {
    expect(about18(3, -14, 14, 5 * um)).toEqual(['18.003', '18.010', '17.990']);
  });

  it('is rounded inward in the unit shown where the gauge is marked in the other', () => {
    // 17.993 mm is 0.708386 in: to five places and inward as a largest 0.70838, never 0.70839.
    const sizes = { targetPm: 17_990 * um, noSmallerPm: 17_986 * um, noLargerPm: 17_993 * um };
    expect(targetFigures(sizes, um, inch)).toEqual({
      size: '0.70827',
      largest: '0.70838',
      smallest: '0.70812',
    });
    // 0.7085 in is 17.9959 mm, 0.7086 in 17.99844 mm.
    const inches = {
      targetPm: 7_085.5 * 2_540_000,
      noSmallerPm: 17_993 * um,
      noLargerPm: 708.6 * thou,
    };
    expect(targetFigures(inches, thou / 10, mm)).toEqual({
      size: '17.997',
      largest: '17.998',
      smallest: '17.993',
    }); // prettier-ignore
  });
});
