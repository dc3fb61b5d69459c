import { parseLength } from '@/lib/units/parse-length';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { askedFrom, dialFrom, type Slide } from './slide';

/** The set-up as it was typed; an empty field is nothing said. */
export type TypedSlide = {
  dial: Slide['dial'];
  division: string;
  fineFeed: string;
  bites: string;
  lap: string;
  dialAt: string;
  /** The machine or tool by its name. */
  tool: string;
};

export type ReadSlide =
  | { kind: 'slide'; slide: Slide; lapPm: number; dialAtPm: number | null }
  | { kind: 'wrong'; fields: (keyof TypedSlide)[] };

/** Divisions a dial may have, pm: a tenth of a micrometre to a millimetre. */
const [finest, coarsest] = [100_000, 1_000_000_000];
/** More than this is not left on for lapping, nor too thin to bite. */
const thinnest = 1_000_000_000;

/** A set-up that is kept already, and the fields as they were filled in from it. */
export type KeptSlide = {
  slide: Slide;
  lapPm: number;
  dialAtPm: number | null;
  typed: TypedSlide;
};

/**
 * Reads the set-up of a slide as it was typed, or names the fields that cannot be so. The thinnest cut is
 * typed as it stands on the dial and kept on diameter. What is on the dial is in the unit its division was
 * typed in, `dialUnit` where none was typed. A field that was not touched keeps what it was filled in from.
 */
export function typedSlide(
  typed: TypedSlide,
  setting: { decimal: DecimalMark; unit: LengthUnit; dialUnit?: LengthUnit },
  kept: KeptSlide | null = null,
): ReadSlide {
  const { decimal, unit: jobUnit } = setting;
  const length = (text: string, most: number, unit: LengthUnit): number | null | 'wrong' => {
    if (text.trim() === '') return null;
    const read = parseLength(text, { decimal, unit });
    if (read.kind !== 'length' || read.isRelative) return 'wrong';
    return read.pm < 0 || read.pm > most ? 'wrong' : read.pm;
  };
  const isKept = (field: keyof TypedSlide) => kept !== null && typed[field] === kept.typed[field];
  const unit = typedDialUnit(typed.division, setting);
  const divisionPm = isKept('division')
    ? kept!.slide.divisionPm
    : length(typed.division, coarsest, unit);
  const bites = isKept('bites')
    ? dialFrom(kept!.slide.bitesPm, kept!.slide)
    : length(typed.bites, thinnest, unit);
  const lap = isKept('lap') ? kept!.lapPm : length(typed.lap, thinnest, jobUnit);
  const dialAt = isKept('dialAt') ? kept!.dialAtPm : length(typed.dialAt, 100 * coarsest, unit);
  const fine = isKept('fineFeed') ? kept!.slide.fineFeed : ratioOf(typed.fineFeed);
  const fields: (keyof TypedSlide)[] = [];
  if (divisionPm === null || divisionPm === 'wrong' || divisionPm < finest) fields.push('division');
  if (!(fine > 0 && fine <= 1000)) fields.push('fineFeed');
  if (bites === 'wrong') fields.push('bites');
  if (lap === 'wrong') fields.push('lap');
  if (dialAt === 'wrong') fields.push('dialAt');
  if (fields.length > 0) return { kind: 'wrong', fields };
  const tool = typed.tool.trim();
  const bare = { dial: typed.dial, divisionPm: divisionPm as number, fineFeed: fine };
  const isSameDial = isKept('bites') && isKept('fineFeed') && isKept('dial');
  const bitesPm = isSameDial ? kept!.slide.bitesPm : askedFrom((bites as number | null) ?? 0, bare);
  return {
    kind: 'slide',
    slide: { ...bare, bitesPm, unit, ...(tool === '' ? {} : { tool }) },
    lapPm: (lap as number | null) ?? 0,
    dialAtPm: dialAt as number | null,
  };
}

/** The unit a dial is said to be marked in: that typed with its division, else the one it was asked in. */
export function typedDialUnit(
  division: string,
  {
    decimal,
    unit,
    dialUnit = unit,
  }: { decimal: DecimalMark; unit: LengthUnit; dialUnit?: LengthUnit },
): LengthUnit {
  const read = parseLength(division, { decimal, unit: dialUnit });
  return read.kind === 'length' ? read.unit : dialUnit;
}

function ratioOf(text: string): number {
  return text.trim() === '' ? 1 : Number(text.replace(',', '.'));
}
