import { describe, expect, it } from 'vitest';
import { madeClearance } from '@/lib/rules/made-clearance';
import { matrixOrder } from '@/lib/rules/matrix-order';
import { um } from './make';
import { smallJob } from './small-job';

// Invented sizes in micrometres from 18 mm; the fit is 0.008 to 0.012.
const three = (microns: number) => [microns, microns, microns];
const bores = [three(10), three(4), three(10), three(7)];

describe('the table of clearances', () => {
  it('goes from the smallest to the largest, alike ones by number, those without a size last', () => {
    const fit = smallJob({ bores, shafts: [three(80), three(0), three(-5)] }).fits[0]!;
    const { rows, columns } = matrixOrder(fit);
    const marks = (pieces: typeof rows) => pieces.map(({ piece }) => piece.mark);
    expect(marks(rows).slice(0, 6)).toEqual(['L2', 'L4', 'L1', 'L3', 'L5', 'L6']);
    // P1 has 0.080 still to come off: it is among those to make.
    expect(marks(columns).slice(0, 4)).toEqual(['P3', 'P2', 'P1', 'P4']);
  });

  it('has no clearance for a piece that metal is still to come off, on either side', () => {
    const { fit, internals, externals } = smallJob({ bores, shafts: [three(80), three(0)] })
      .fits[0]!;
    expect(madeClearance(internals[0]!, externals[0]!, fit)).toBeNull();
    expect(madeClearance(internals[0]!, externals[1]!, fit)!.clearancePm).toBe(10 * um);
    const tight = { ...internals[0]!, stillToCut: true };
    expect(madeClearance(tight, externals[1]!, fit)).toBeNull();
  });
});
