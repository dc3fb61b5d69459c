import type { Dial } from '@/lib/maths/fit/dial-setting';

/** The slide a cut is put on with, as the person at this device has said it. */
export type Slide = {
  /** What one division moves: half of what comes off the diameter, or all of it. */
  dial: Dial['reads'];
  divisionPm: number;
  /** Dial movement for one of infeed; 1 for a slide square to the work. */
  fineFeed: number;
  /** The thinnest cut the tool bites, on diameter; 0 while nobody has said. */
  bitesPm: number;
};

/** The slide as the mathematics of the dial takes it. */
export function dialOf({ dial, divisionPm, fineFeed }: Omit<Slide, 'bitesPm'>): Dial {
  return { reads: dial, divisionPm, fineFeedRatio: fineFeed };
}

/** What an amount on the dial asks for on diameter, whole pm. */
export function askedFrom(dialPm: number, { dial, fineFeed }: Omit<Slide, 'bitesPm'>): number {
  return Math.round((dialPm * (dial === 'radius' ? 2 : 1)) / fineFeed);
}

/** What an amount on diameter is on the dial, whole pm. */
export function dialFrom(askedPm: number, { dial, fineFeed }: Omit<Slide, 'bitesPm'>): number {
  return Math.round((askedPm * fineFeed) / (dial === 'radius' ? 2 : 1));
}
