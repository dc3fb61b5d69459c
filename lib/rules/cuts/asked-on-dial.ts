import type { Cut } from '@/lib/schema/fit';
import type { LengthUnit } from '@/lib/units/picometres';
import { dialFrom, dialUnit } from './slide';

/** What stood on a dial, pm, and the unit it is marked in. */
export type OnADial = { dialPm: number; unit: LengthUnit };

/**
 * What was put on the dial for a cut, in the unit the cut says of its dial, else in the one its division tells
 * (`dialUnit`). Null where nothing was asked for, or the cut does not say its slide.
 */
export function askedOnDial(cut: Cut, job: LengthUnit): OnADial | null {
  const { dial = null, divisionPm = null, fineFeed, dialUnit: unit = null, askedPm } = cut;
  if (dial === null || divisionPm === null || cut.spring || askedPm === 0) return null;
  return {
    dialPm: dialFrom(askedPm, { dial, divisionPm, fineFeed: fineFeed ?? 1 }),
    unit: dialUnit({ divisionPm, ...(unit === null ? {} : { unit }) }, job),
  };
}
