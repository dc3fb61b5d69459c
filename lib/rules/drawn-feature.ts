import { classLimits } from '@/lib/maths/iso286/class-limits';
import type { FeatureKind } from '@/lib/schema/feature';
import { parseDrawnSize, type DrawnSize, type ParsedDrawnSize } from '@/lib/units/parse-drawn-size';
import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

/** What a line of the drawing says of a feature, deviations looked up where a class is given. */
export type DrawnFeature = Pick<
  DrawnSize,
  'nominalPm' | 'upperPm' | 'lowerPm' | 'isoClass' | 'unit'
> & {
  /**
   * What it most likely is: a capital class letter, or limits upward from the size alone, is a bore; a
   * small letter, limits downward alone or a diameter is an outside (hole and shaft basis, ISO 286-1).
   */
  likely: FeatureKind;
};

export type ReadDrawn =
  | ({ kind: 'feature' } & DrawnFeature)
  | Exclude<ParsedDrawnSize, { kind: 'size' }>
  | { kind: 'class'; isoClass: string };

const picoPerMicro = 1_000_000;
const picoPerMilli = 1_000_000_000;

/**
 * Reads a size as a drawing gives it (`18.000 +0.018 0`, `18 H7`, `1/2 in`, `Ø22 ±0.05`), with the
 * deviations of a tolerance class looked up (ISO 286-1). A class that is not defined at that size comes
 * back as `class`; what cannot be read, or can be read in two ways, comes back as `parseDrawnSize` says.
 */
export function readDrawn(
  text: string,
  setting: { decimal: DecimalMark; unit: LengthUnit },
): ReadDrawn {
  const read = parseDrawnSize(text, setting);
  if (read.kind !== 'size') return read;
  const { nominalPm, isoClass, unit } = read;
  const plain = { nominalPm, isoClass, unit };
  if (isoClass === null) {
    const { upperPm, lowerPm } = read;
    return { kind: 'feature', ...plain, upperPm, lowerPm, likely: likelyOf(read) };
  }
  try {
    const { side, upperUm, lowerUm } = classLimits(isoClass, nominalPm / picoPerMilli);
    return {
      kind: 'feature',
      ...plain,
      upperPm: Math.round(upperUm * picoPerMicro),
      lowerPm: Math.round(lowerUm * picoPerMicro),
      likely: side === 'internal' ? 'bore' : 'outside',
    };
  } catch {
    return { kind: 'class', isoClass };
  }
}

/** Two limits have no basic size: which of them stands as the nominal says nothing of the feature. */
function likelyOf({ upperPm, lowerPm, isLimits, isDiameter }: DrawnSize): FeatureKind {
  if (!isLimits && upperPm !== null && lowerPm !== null) {
    if (lowerPm === 0 && upperPm > 0) return 'bore';
    if (upperPm === 0 && lowerPm < 0) return 'outside';
  }
  return isDiameter ? 'outside' : 'length';
}
