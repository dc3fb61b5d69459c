import { z } from 'zod';
import { LengthPm, Name, ShortText, thing } from './common';

/** Nanometres per millimetre of diameter: 1000 is 1 µm per mm, or a thousandth of an inch per inch. */
export const SlopeNmPerMm = z.int().min(-1_000_000).max(1_000_000);

/** A rule of practice of the shop's own: clearance = constant + slope x diameter. */
export const fitRule = thing({
  fixed: {},
  fields: {
    name: Name,
    fixedPm: LengthPm.describe('The part that does not grow with the diameter; minus is tighter'),
    minNmPerMm: SlopeNmPerMm.describe('Slope of the least clearance; minus is interference'),
    aimNmPerMm: SlopeNmPerMm.describe('Slope of the clearance aimed at'),
    maxNmPerMm: SlopeNmPerMm.describe('Slope of the most clearance'),
    note: ShortText.describe('What it is for'),
  },
  made: {},
});
export type FitRule = z.infer<typeof fitRule.Row>;
