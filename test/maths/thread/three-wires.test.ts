import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { threeWires, wiresOver } from '@/lib/maths/thread/three-wires';

describe('threeWires', () => {
  it('agrees with wires laid in the grooves of a thread, seen from the end of the axis', () => {
    const pitches = fc.double({ min: 0.4, max: 6, noNaN: true });
    const parts = fc.double({ min: 0.51, max: 1, noNaN: true });
    fc.assert(
      fc.property(pitches, parts, (pitchMm, part) => {
        const wireMm = part * pitchMm;
        // A wire touches both flanks: its centre is wire/2 / sin 30 = one wire above the sharp root,
        // which lies H/2 below the pitch line.
        const height = (Math.sqrt(3) / 2) * pitchMm;
        const overWiresMm = 2 * (10 - height / 2 + wireMm + wireMm / 2);
        const found = threeWires({ pitchMm, wireMm, overWiresMm });
        expect(found.pitchDiameterMm).toBeCloseTo(20, 10);
        expect(20 + wiresOver(pitchMm, wireMm)).toBeCloseTo(overWiresMm, 10);
        // The best wire touches at the pitch line: its centre is on it.
        expect(found.bestWireMm).toBeCloseTo(height / 1.5, 10);
      }),
    );
  });

  it.each([
    ['three-wires/wire', { wireMm: 0.7 }],
    ['three-wires/wire', { wireMm: 1.6 }],
    ['three-wires/wire', { pitchMm: 0 }],
    ['three-wires/size', { overWiresMm: 2 }],
    ['three-wires/size', { overWiresMm: Infinity }],
  ])('refuses by %s', (code, part) => {
    const good = { pitchMm: 1.5, wireMm: 0.866, overWiresMm: 10.295 };
    expect(() => threeWires({ ...good, ...part })).toThrow(expect.objectContaining({ code }));
  });
});
