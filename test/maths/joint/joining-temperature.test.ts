import { describe, expect, it } from 'vitest';
import { joiningTemperature } from '@/lib/maths/joint/joining-temperature';
import { heatOnePiece } from '@/lib/maths/thermal/heat-one-piece';

const joint = {
  seatMm: 50,
  interferenceMm: 0.045,
  gapMm: 0.05,
  expansionPerC: 11.5e-6,
  roomC: 20,
};

describe('joiningTemperature', () => {
  it('opens the seat by interference and gap together', () => {
    // By hand: 0.095 / (50 x 11.5e-6) = 165.217 degrees above the room.
    expect(joiningTemperature(joint)).toBeCloseTo(185.2174, 4);
    expect(joiningTemperature({ ...joint, roomC: 15 })).toBeCloseTo(180.2174, 4);
  });

  it('agrees with the two-diameter form within the interference as a part of the seat', () => {
    const { expansionPerC } = joint;
    const exact = heatOnePiece({
      change: 'bore',
      bore: { size20Mm: 50, expansionPerC },
      shaft: { size20Mm: 50.045, expansionPerC },
      gapMm: 0.05,
      otherC: 20,
    });
    expect(exact.kind).toBe('found');
    // Both are the same line but for the size it starts from: 0.1 % covers 0.045 in 50.
    const both = exact.kind === 'found' ? exact.temperatureC : 0;
    expect(joiningTemperature(joint) / both).toBeCloseTo(1, 3);
  });

  it('needs no heat where there is nothing to open', () => {
    expect(joiningTemperature({ ...joint, interferenceMm: 0, gapMm: 0 })).toBe(20);
  });

  it.each([
    { seatMm: 0 },
    { interferenceMm: -0.01 },
    { gapMm: -0.01 },
    { expansionPerC: 0 },
    { expansionPerC: 11.5 },
    { roomC: NaN },
  ])('refuses %o', (part) => {
    expect(() => joiningTemperature({ ...joint, ...part })).toThrow(
      expect.objectContaining({ code: 'joining-temperature/input' }),
    );
  });
});
