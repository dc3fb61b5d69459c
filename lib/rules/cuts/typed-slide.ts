import { parseLength } from '@/lib/units/parse-length';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';
import { askedFrom, type Slide } from './slide';

/** The set-up as it was typed; an empty field is nothing said. */
export type TypedSlide = {
  dial: Slide['dial'];
  division: string;
  fineFeed: string;
  bites: string;
  lap: string;
  dialAt: string;
};

export type ReadSlide =
  | { kind: 'slide'; slide: Slide; lapPm: number; dialAtPm: number | null }
  | { kind: 'wrong'; fields: (keyof TypedSlide)[] };

/** Divisions a dial may have, pm: a tenth of a micrometre to a millimetre. */
const [finest, coarsest] = [100_000, 1_000_000_000];
/** More than this is not left on for lapping, nor too thin to bite. */
const thinnest = 1_000_000_000;

/**
 * Reads the set-up of a slide as it was typed, or names the fields that cannot be so. The thinnest cut is
 * typed as it stands on the dial and kept on diameter.
 */
export function typedSlide(
  typed: TypedSlide,
  setting: { decimal: DecimalMark; unit: LengthUnit },
): ReadSlide {
  const length = (text: string, most: number): number | null | 'wrong' => {
    if (text.trim() === '') return null;
    const read = parseLength(text, setting);
    if (read.kind !== 'length' || read.isRelative) return 'wrong';
    return read.pm < 0 || read.pm > most ? 'wrong' : read.pm;
  };
  const divisionPm = length(typed.division, coarsest);
  const bites = length(typed.bites, thinnest);
  const lap = length(typed.lap, thinnest);
  const dialAt = length(typed.dialAt, 100 * coarsest);
  const fine = typed.fineFeed.trim() === '' ? 1 : Number(typed.fineFeed.replace(',', '.'));
  const fields: (keyof TypedSlide)[] = [];
  if (divisionPm === null || divisionPm === 'wrong' || divisionPm < finest) fields.push('division');
  if (!(fine > 0 && fine <= 1000)) fields.push('fineFeed');
  if (bites === 'wrong') fields.push('bites');
  if (lap === 'wrong') fields.push('lap');
  if (dialAt === 'wrong') fields.push('dialAt');
  if (fields.length > 0) return { kind: 'wrong', fields };
  const bare = { dial: typed.dial, divisionPm: divisionPm as number, fineFeed: fine };
  return {
    kind: 'slide',
    slide: { ...bare, bitesPm: askedFrom((bites as number | null) ?? 0, bare) },
    lapPm: (lap as number | null) ?? 0,
    dialAtPm: dialAt as number | null,
  };
}
