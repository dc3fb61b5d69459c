import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { interferenceForHoop } from '@/lib/maths/joint/interference-for-hoop';
import { pressFit, type PressJoint } from '@/lib/maths/joint/press-fit';

const joint: PressJoint = {
  seatMm: 30,
  hubOutsideMm: 60,
  shaftBoreMm: 10,
  hub: { youngMPa: 110_000, poisson: 0.26 },
  shaft: { youngMPa: 206_000, poisson: 0.3 },
};

describe('interferenceForHoop', () => {
  it('undoes pressFit', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (limit) => {
        const { interferenceMm, pressureMPa } = interferenceForHoop(joint, limit);
        const back = pressFit(joint, interferenceMm);
        expect(back.hubHoopAtBoreMPa / limit).toBeCloseTo(1, 12);
        expect(back.pressureMPa / pressureMPa).toBeCloseTo(1, 12);
      }),
    );
  });

  it('gives 102 MPa for 170 MPa of hoop in a hub twice the seat', () => {
    // (4 - 1)/(4 + 1) x 170 = 102, by hand.
    expect(interferenceForHoop(joint, 170).pressureMPa).toBeCloseTo(102, 10);
  });

  it.each([
    ['interference-for-hoop/limit', joint, -1],
    ['interference-for-hoop/diameter', { ...joint, seatMm: 5 }, 100],
  ])('refuses by %s', (code, of, limit) => {
    expect(() => interferenceForHoop(of, limit)).toThrow(expect.objectContaining({ code }));
  });
});
