import { describe, expect, it } from 'vitest';
import { entryPartner } from '@/lib/rules/entry-partner';
import { jobView } from '@/lib/rules/job-view';
import { cellKey } from '@/lib/rules/cells';
import { exampleSheet } from './example-sheet';
import { um } from './make';

/**
 * The example with a second fit on the liner: its outside, left open by the drawing, goes between the cheeks
 * of the base plate (30 mm, so each liner is some 6 mm clear), and the piston runs in its bore as before.
 */
function twoFits() {
  const sheet = exampleSheet();
  const feature = (balloon: string) => sheet.features.find((one) => one.balloon === balloon)!;
  const first = sheet.fits[0]!;
  const second = {
    ...first,
    id: 'second fit',
    name: 'Liner in base plate',
    internalFeatureId: feature('10').id,
    externalFeatureId: feature('3').id,
    minPm: 6_000 * um,
    maxPm: 6_100 * um,
    aimPm: 6_060 * um,
  };
  const features = sheet.features.map((one) =>
    one.balloon === '3' ? { ...one, upperPm: null, lowerPm: null } : one,
  );
  const view = jobView({ ...sheet, features, fits: [first, second] });
  const piece = (mark: string) => sheet.pieces.find((one) => one.mark === mark)!;
  return { view, piece, feature };
}

describe('a part in two fits', () => {
  it('has a partner at each of its features', () => {
    const { view, piece, feature } = twoFits();
    const liner = piece('L5').id;
    expect(view.fits).toHaveLength(2);
    const atBore = view.matesByFeature.get(cellKey(liner, feature('1').id))!;
    const atOutside = view.matesByFeature.get(cellKey(liner, feature('3').id))!;
    expect(atBore.pieceId).toBe(piece('P5').id);
    expect(atOutside.fitId).toBe('second fit');
    expect(view.sheet.pieces.find(({ id }) => id === atOutside.pieceId)!.mark).toMatch(/^BP/);
    // The board has room for one: that of the first fit.
    expect(view.mates.get(liner)).toEqual(atBore);
  });

  it('takes the limits of an open feature from the partner of that feature', () => {
    const { view, piece, feature } = twoFits();
    const cell = view.cell(piece('L5').id, feature('3').id);
    const mate = view.matesByFeature.get(cellKey(piece('L5').id, feature('3').id))!;
    const plate = view.fits[1]!.internals.find((one) => one.piece.id === mate.pieceId)!;
    expect(cell.limitsFrom).toBe('partner');
    expect(cell.limits.upperPm).toBe(plate.size!.valuePm - 6_000 * um);
    expect(cell.verdict).not.toBeNull();
  });

  it('shows the Bench the partner of the feature that is measured', () => {
    const { view, piece, feature } = twoFits();
    const at = (balloon: string) => entryPartner(view, piece('L5').id, feature(balloon).id);
    expect(at('1')).toMatchObject({ side: 'internal', piece: { mark: 'P5' } });
    expect(at('3')).toMatchObject({ side: 'external', fit: { fit: { id: 'second fit' } } });
  });
});
