import { jobView } from '@/lib/rules/job-view';
import { exampleSheet } from './example-sheet';
import { um } from './make';

/**
 * The example with a second fit on the liner: its outside, left open by the drawing, goes between the cheeks
 * of the base plate (30 mm, so each liner is some 6 mm clear), and the piston runs in its bore as before.
 */
export function twoFits() {
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
  const both = { ...sheet, features, fits: [first, second] };
  const piece = (mark: string) => sheet.pieces.find((one) => one.mark === mark)!;
  return { sheet: both, view: jobView(both), piece, feature };
}
