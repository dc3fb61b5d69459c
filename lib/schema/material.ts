import { z } from 'zod';
import { Name, ShortText, thing } from './common';

/** Thousandths of a micrometre per metre and degree: 11.5e-6 per degree C is 11 500. A rubber has 300 000. */
const NanoPerC = z.int().min(-1_000_000).max(1_000_000);

/** A material of the shop's own: how it grows with heat, between what, and who says so. */
export const material = thing({
  fixed: {},
  fields: {
    name: Name,
    expansionNanoPerC: NanoPerC.describe(
      'Mean coefficient of linear expansion from 20 degrees C, in 1e-9 per degree C',
    ),
    lowNanoPerC: NanoPerC.describe('The least it may be'),
    highNanoPerC: NanoPerC.describe('The most it may be'),
    source: ShortText.describe('Where the figures come from'),
  },
  made: {},
});
export type Material = z.infer<typeof material.Row>;
