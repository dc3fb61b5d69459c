import type { Dial } from '@/lib/maths/fit/dial-setting';
import type { Cut } from '@/lib/schema/fit';
import type { LengthUnit } from '@/lib/units/picometres';

/** The slide a cut is put on with, as the person at this device has said it. */
export type Slide = {
  /** What one division moves: half of what comes off the diameter, or all of it. */
  dial: Dial['reads'];
  divisionPm: number;
  /** Dial movement for one of infeed; 1 for a slide square to the work. */
  fineFeed: number;
  /** The thinnest cut the tool bites, on diameter; 0 while nobody has said. */
  bitesPm: number;
  /** What its dial is marked in; not there where nobody has said. */
  unit?: LengthUnit;
  /** The machine or the tool by its name, where there are two of one dial; kept as the tool of the cut. */
  tool?: string;
};

/** What turns an amount on the dial into one on diameter, and whose dial it is. */
export type SlideDial = Pick<Slide, 'dial' | 'divisionPm' | 'fineFeed' | 'tool'>;

/** The slide as the mathematics of the dial takes it. */
export function dialOf({ dial, divisionPm, fineFeed }: SlideDial): Dial {
  return { reads: dial, divisionPm, fineFeedRatio: fineFeed };
}

/** Whether a cut may have been put on with this slide; one that does not say its slide, with any. */
export function isOnSlide(cut: CutOn, slide: SlideDial): boolean {
  const { dial, divisionPm, fineFeed, tool } = cut;
  return (
    (!saysOn(cut) || tool === (slide.tool ?? '')) &&
    (dial ?? slide.dial) === slide.dial &&
    (divisionPm ?? slide.divisionPm) === slide.divisionPm &&
    (fineFeed ?? slide.fineFeed) === slide.fineFeed
  );
}

/** Whether a cut says what it was put on with: a dial, or a machine or tool by its name. */
export function saysOn({ dial, tool }: Pick<CutOn, 'dial' | 'tool'>): boolean {
  return (dial ?? null) !== null || tool !== '';
}

type CutOn = Pick<Cut, 'dial' | 'divisionPm' | 'fineFeed' | 'tool'>;

/** What an amount on the dial asks for on diameter, whole pm. */
export function askedFrom(dialPm: number, { dial, fineFeed }: SlideDial): number {
  return Math.round((dialPm * (dial === 'radius' ? 2 : 1)) / fineFeed);
}

/** What an amount on diameter is on the dial, whole pm. */
export function dialFrom(askedPm: number, { dial, fineFeed }: SlideDial): number {
  return Math.round((askedPm * fineFeed) / (dial === 'radius' ? 2 : 1));
}

/**
 * The unit a dial is marked in: as said; else inches where a division is whole in hundred-thousandths of an inch
 * and not in micrometres; else the job's own.
 */
export function dialUnit(slide: Pick<Slide, 'divisionPm' | 'unit'>, job: LengthUnit): LengthUnit {
  if (slide.unit !== undefined) return slide.unit;
  const { divisionPm } = slide;
  if (divisionPm % 1_000_000 === 0) return divisionPm % 254_000 === 0 ? job : 'mm';
  return divisionPm % 254_000 === 0 ? 'in' : job;
}
