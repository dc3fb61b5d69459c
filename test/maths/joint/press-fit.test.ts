import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pressFit, type PressJoint } from '@/lib/maths/joint/press-fit';

const steel = { youngMPa: 206_000, poisson: 0.3 };
const solid: PressJoint = {
  seatMm: 30,
  hubOutsideMm: 60,
  shaftBoreMm: 0,
  hub: steel,
  shaft: steel,
};

const joints = fc
  .record({
    seat: fc.double({ min: 5, max: 200, noNaN: true }),
    wall: fc.double({ min: 1.1, max: 5, noNaN: true }),
    bore: fc.double({ min: 0, max: 0.9, noNaN: true }),
    hubYoung: fc.double({ min: 40_000, max: 300_000, noNaN: true }),
    shaftYoung: fc.double({ min: 40_000, max: 300_000, noNaN: true }),
    poisson: fc.double({ min: 0.2, max: 0.4, noNaN: true }),
  })
  .map((of): PressJoint => ({
    seatMm: of.seat,
    hubOutsideMm: of.seat * of.wall,
    shaftBoreMm: of.seat * of.bore,
    hub: { youngMPa: of.hubYoung, poisson: of.poisson },
    shaft: { youngMPa: of.shaftYoung, poisson: of.poisson },
  }));

describe('pressFit', () => {
  it('agrees with the short formula for a solid shaft in a hub of the same material', () => {
    // Shigley 9th ed. eq. 3-57: p = E delta (D^2 - d^2) / (2 d D^2) = 206000 x 0.03 x 2700 /
    // (2 x 30 x 3600) = 77.25 MPa, by hand; 1e-9 is the rounding of a few doubles.
    expect(pressFit(solid, 0.03).pressureMPa).toBeCloseTo(77.25, 9);
  });

  it('agrees with the built-up cylinder of Timoshenko', () => {
    // Strength of Materials part II: a = 4, b = 6, c = 8 in, radial 0.005 in, E = 30e6 psi: 4050 psi
    // as printed, rounded to five.
    const material = { youngMPa: 30e6, poisson: 0.3 };
    const cylinder = { seatMm: 12, hubOutsideMm: 16, shaftBoreMm: 8 };
    const { pressureMPa, hollow } = pressFit({ ...cylinder, hub: material, shaft: material }, 0.01);
    expect(Math.abs(pressureMPa - 4050)).toBeLessThan(5);
    // Lame at the inner bore, -2 p d^2/(d^2 - i^2) with 4050.93: -14583.33.
    expect(hollow!.shaftHoopAtBoreMPa).toBeCloseTo(-14583.33, 1);
  });

  it('closes the interference exactly by hub growing and shaft shrinking at the seat', () => {
    fc.assert(
      fc.property(joints, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (joint, delta) => {
        // Strain at the seat: hoop strain (sigma_hoop - nu sigma_radial)/E with sigma_radial = -p.
        const found = pressFit(joint, delta);
        const { pressureMPa: p, hubHoopAtBoreMPa, shaftHoopAtSeatMPa } = found;
        const hub = (hubHoopAtBoreMPa + joint.hub.poisson * p) / joint.hub.youngMPa;
        const shaft = (shaftHoopAtSeatMPa + joint.shaft.poisson * p) / joint.shaft.youngMPa;
        expect(joint.seatMm * (hub - shaft)).toBeCloseTo(delta, 10);
      }),
    );
  });

  it('keeps the wall in balance: hoop stress over the hub section carries the pressure', () => {
    fc.assert(
      fc.property(joints, (joint) => {
        // Thick wall: sigma(r) = A + B/r^2 integrates to p d/2 over the wall (equilibrium of a half ring).
        const { hubHoopAtBoreMPa, hubHoopOutsideMPa, pressureMPa } = pressFit(joint, 0.05);
        const [a, b] = [joint.seatMm / 2, joint.hubOutsideMm / 2];
        const B = (hubHoopAtBoreMPa - hubHoopOutsideMPa) / (1 / (a * a) - 1 / (b * b));
        const A = hubHoopOutsideMPa - B / (b * b);
        const carried = A * (b - a) + B * (1 / a - 1 / b);
        expect(carried / (pressureMPa * a)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('takes the equivalent stress of the hub bore by von Mises', () => {
    // Hub bore of the solid joint: hoop 128.75, radial -77.25:
    // sqrt(128.75^2 + 128.75 x 77.25 + 77.25^2) = 180.25 by hand.
    expect(pressFit(solid, 0.03).hubEquivalentMPa).toBeCloseTo(180.25, 9);
  });

  it('lets the hub grow at its outside by its hoop strain there', () => {
    // Outside there is no pressure: D sigma/E = 60 x 51.5 / 206000 = 0.015 by hand.
    expect(pressFit(solid, 0.03).hubOutsideGrowsMm).toBeCloseTo(0.015, 12);
  });

  it('grips by friction over the seat', () => {
    // pi x 30 x 35 x 77.25 x 0.12 = 30578.69 N; times 15 mm = 458.68 Nm.
    const { grip } = pressFit(solid, 0.03, { lengthMm: 35, friction: 0.12 });
    expect(grip!.axialForceN).toBeCloseTo(30_578.69, 1);
    expect(grip!.torqueNm).toBeCloseTo(458.68, 2);
  });

  it('closes the bore of a thin bush by most of the interference', () => {
    const bush = { ...solid, seatMm: 25, hubOutsideMm: 55, shaftBoreMm: 24 };
    const { hollow } = pressFit(bush, 0.03);
    expect(hollow!.boreClosesMm).toBeGreaterThan(0.8 * 0.03);
    expect(hollow!.boreClosesMm).toBeLessThan(1.05 * 0.03);
  });

  it('presses nothing without an interference', () => {
    for (const delta of [0, -0.01]) {
      const found = pressFit(solid, delta, { lengthMm: 10, friction: 0.1 });
      expect(found).toMatchObject({ pressureMPa: 0, hubHoopAtBoreMPa: 0, hubOutsideGrowsMm: 0 });
      expect(found.shaftHoopAtSeatMPa).toBe(0);
      expect(found.grip).toEqual({ axialForceN: 0, torqueNm: 0 });
    }
    expect(pressFit(solid, 0.01).hollow).toBeUndefined();
    expect(pressFit(solid, 0.01).grip).toBeUndefined();
  });

  it.each([
    ['press-fit/diameter', { seatMm: 60 }],
    ['press-fit/diameter', { shaftBoreMm: 30 }],
    ['press-fit/diameter', { shaftBoreMm: -1 }],
    ['press-fit/diameter', { hubOutsideMm: Infinity }],
    ['press-fit/material', { hub: { youngMPa: 0, poisson: 0.3 } }],
    ['press-fit/material', { shaft: { youngMPa: 1, poisson: 0.6 } }],
    ['press-fit/material', { shaft: { youngMPa: 1, poisson: -0.1 } }],
  ])('refuses by %s', (code, part) => {
    expect(() => pressFit({ ...solid, ...part }, 0.01)).toThrow(expect.objectContaining({ code }));
  });

  it('refuses an interference or a grip that is none', () => {
    expect(() => pressFit(solid, NaN)).toThrow(
      expect.objectContaining({ code: 'press-fit/interference' }),
    );
    for (const grip of [
      { lengthMm: 0, friction: 0.1 },
      { lengthMm: 1, friction: -0.1 },
    ]) {
      expect(() => pressFit(solid, 0.01, grip)).toThrow(
        expect.objectContaining({ code: 'press-fit/grip' }),
      );
    }
  });
});
