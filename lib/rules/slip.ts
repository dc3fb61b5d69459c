import type { SlipKind } from '@/lib/schema/reading';
import { doubtedText } from './slips/doubted-text';
import { expectedReading, type ExpectedReading } from './slips/expected-reading';
import { frameStepsPm, needleTurnsPm, sleeveLinesPm, thimbleTurnsPm } from './slips/gauge-steps';
import type { DoubtedReading, Elsewhere, SlipFacts } from './slips/slip-facts';
import { oneFigureVariants, swappedVariants, type TypedVariant } from './slips/typed-variants';
import { metalLeftSide } from './verdict';

/** What a reading is suspected of, as data for a question. Lengths in pm. */
export type Slip = {
  kind: SlipKind;
  /** What it would read without the slip; null where nothing explains it. */
  insteadPm: number | null;
  /** The turn, the line or the frame that was missed; null for the other slips. */
  stepPm: number | null;
  /** The end of the gauge's range it lies beyond; null where it lies within. */
  stopsAtPm: number | null;
  /** Whose size it is, for `wrong feature`. */
  elsewhere: Elsewhere | null;
  /** What it was held against; null where only the gauge's range speaks. */
  expected: ExpectedReading | null;
};

/** A slip that only distance points to must be this many resolutions off, or beyond the whole band. */
const farResolutions = 50;
/** Where the gauge has a history of so many degrees of freedom, that alone says what is far. */
const historyDegrees = 4;
/** Beyond this many standard deviations of that history, and this many resolutions, nothing is form. */
const farHistory = 10;

/**
 * The slip a reading looks like, or null where nothing is odd about it.
 *
 * A reading is doubted when it lies outside what was expected of it by max(5 s, 4 resolutions), and
 * named after the first fingerprint that brings it back within max(3 s, 2 resolutions): a turn of the
 * thimble or of the needle, a line of the sleeve, a frame of another size, the other unit, the point,
 * two figures swapped, half or double, another feature of the piece or its partner, one figure. The last
 * two are asked only of a reading more than 50 resolutions and more than the band away from other
 * readings. What nothing explains is `far off` from there, and from max(10 s, 10 resolutions) where s is
 * a history of the gauge with at least 4 degrees of freedom. A reading beyond the gauge's own range is
 * `far off` whatever was expected. Where only last figures were typed, the whole size is looked at.
 *
 * A first reading is held against the limits; outside them on the side where metal can still come off it
 * is stock, not a slip, and a size that is only out is not doubted for a swap of figures that would put
 * it right. Beyond what ratios and stock make of it, it is looked at for swapped and single wrong figures
 * too, and is `far off` where nothing explains it. Nothing is ever mended here: the answer is a question.
 *
 * The fingerprints and thresholds are common practice, no source; turns, lines and frames are those of
 * `slips/gauge-steps`. Cost: some seventy readings of a short text at most.
 *
 * @example
 * slipOf({ text: '18.498', valuePm: 18_498_000_000, resolutionPm: 1_000_000 }, facts)
 * // others at 17.999: { kind: 'thimble turn', insteadPm: 17_998_000_000, stepPm: 500_000_000, ... }
 */
export function slipOf(typed: DoubtedReading, facts: SlipFacts): Slip | null {
  const reading = { ...typed, text: doubtedText(typed, facts.setting) };
  const expected = expectedReading(reading, facts);
  const stopsAtPm = endOfRange(reading, facts);
  if (expected !== null && isDoubted(reading, expected)) {
    for (const fingerprint of fingerprints) {
      const found = fingerprint(reading, facts, expected);
      if (found !== null) return { ...plain, stopsAtPm, expected, ...found };
    }
    if (stopsAtPm === null && isFarOff(reading, facts, expected)) {
      return { ...plain, kind: 'far off', expected };
    }
  }
  return stopsAtPm === null ? null : { ...plain, kind: 'far off', stopsAtPm, expected };
}

const plain = { insteadPm: null, stepPm: null, stopsAtPm: null, elsewhere: null, expected: null };

type Found = Partial<Slip> & { kind: SlipKind };
type Fingerprint = (
  reading: DoubtedReading,
  facts: SlipFacts,
  expected: ExpectedReading,
) => Found | null;

/** In the order in which they are believed. */
const fingerprints: Fingerprint[] = [
  missed('thimble turn', thimbleTurnsPm),
  missed('needle turn', needleTurnsPm),
  missed('sleeve line', sleeveLinesPm),
  missed('wrong frame', frameStepsPm),
  ratios(isWithin),
  (reading, facts, expected) =>
    expected.from === 'readings' || isBeyondRatio(reading, expected)
      ? variant('swapped figures', swappedVariants(reading.text, facts.setting), expected)
      : null,
  halves(isWithin),
  wrongFeature,
  (reading, facts, expected) =>
    isFar(reading, facts, expected) || isFirstBeyond(reading, expected)
      ? variant('one figure', oneFigureVariants(reading.text, facts.setting), expected)
      : null,
  // Ratios are coarse: a first reading also fits where stock may still stand.
  ratios(isCalm),
  halves(isCalm),
];

function isDoubted({ valuePm }: DoubtedReading, expected: ExpectedReading): boolean {
  return valuePm < expected.calmLowPm || valuePm > expected.calmHighPm;
}

/** A whole turn, line or frame more or less than expected, where the stretch and the text are narrow enough to tell. */
function missed(
  kind: SlipKind,
  stepsPm: (gauge: SlipFacts['gauge']) => readonly number[],
): Fingerprint {
  return ({ valuePm }, { gauge }, expected) => {
    for (const stepPm of stepsPm(gauge)) {
      const isWide = expected.highPm - expected.lowPm > stepPm / 2;
      if (isWide || expected.tolerancePm > stepPm / 4) continue;
      const insteadPm = [valuePm - stepPm, valuePm + stepPm].find((pm) => isWithin(pm, expected));
      if (insteadPm !== undefined) return { kind, insteadPm, stepPm };
    }
    return null;
  };
}

/** A first reading is off by a ratio only when it is this far from its limits; nearer, it is only out. */
const ratioBelow = 0.7;
const ratioAbove = 1.4;

/** More metal than this many times what is wanted is no stock of it. */
const stockTimes = 3;

function isBeyondRatio(
  { valuePm }: Pick<DoubtedReading, 'valuePm'>,
  { lowPm, highPm, calmHighPm }: ExpectedReading,
): boolean {
  return valuePm < ratioBelow * lowPm || valuePm > Math.max(ratioAbove * highPm, calmHighPm);
}

function isFirstBeyond(reading: DoubtedReading, expected: ExpectedReading): boolean {
  return expected.from !== 'readings' && isBeyondRatio(reading, expected);
}

/** A first reading that nothing explains, and that no stock could be: under its limits, or far over them. */
function isNoStock(
  { valuePm }: DoubtedReading,
  { kind }: SlipFacts,
  { from, lowPm, highPm }: ExpectedReading,
): boolean {
  if (from === 'readings') return false;
  const side = metalLeftSide(kind);
  const most = side === 'top' ? stockTimes : ratioAbove;
  const least = side === 'bottom' ? 1 / stockTimes : ratioBelow;
  return valuePm > most * highPm || valuePm < least * lowPm;
}

type Fits = (pm: number, expected: ExpectedReading) => boolean;

function ratios(isFit: Fits): Fingerprint {
  return (reading, _, expected) =>
    factor('other unit', [25.4, 1 / 25.4], reading, expected, isFit) ??
    factor('decimal point', [10, 100, 1 / 10, 1 / 100, 1 / 1000], reading, expected, isFit);
}

function halves(isFit: Fits): Fingerprint {
  return (reading, _, expected) => factor('half or double', [2, 1 / 2], reading, expected, isFit);
}

function factor(
  kind: SlipKind,
  factors: readonly number[],
  { valuePm }: DoubtedReading,
  expected: ExpectedReading,
  isFit: Fits,
): Found | null {
  if (expected.from !== 'readings' && !isBeyondRatio({ valuePm }, expected)) return null;
  const insteadPm = factors
    .map((times) => Math.round(valuePm * times))
    .find((pm) => isFit(pm, expected));
  return insteadPm === undefined ? null : { kind, insteadPm };
}

/** Between the limits, or among the other readings. */
function isWithin(pm: number, { lowPm, highPm, tolerancePm }: ExpectedReading): boolean {
  return pm >= lowPm - tolerancePm && pm <= highPm + tolerancePm;
}

/** Of a first reading: where it would not be doubted. */
function isCalm(pm: number, { from, calmLowPm, calmHighPm }: ExpectedReading): boolean {
  return from !== 'readings' && pm >= calmLowPm && pm <= calmHighPm;
}

function variant(
  kind: SlipKind,
  variants: readonly TypedVariant[],
  expected: ExpectedReading,
): Found | null {
  const found = variants.find(({ valuePm }) => isWithin(valuePm, expected));
  return found === undefined ? null : { kind, insteadPm: found.valuePm };
}

function wrongFeature(
  reading: DoubtedReading,
  facts: SlipFacts,
  expected: ExpectedReading,
): Found | null {
  if (!isFar(reading, facts, expected)) return null;
  const elsewhere = facts.elsewhere.find(({ lowPm, highPm }) =>
    isWithin(reading.valuePm, { ...expected, lowPm, highPm }),
  );
  return elsewhere === undefined ? null : { kind: 'wrong feature', elsewhere };
}

function isFar(
  { valuePm }: DoubtedReading,
  { gauge, limits }: SlipFacts,
  expected: ExpectedReading,
): boolean {
  if (expected.from !== 'readings') return false;
  const offPm = Math.max(expected.lowPm - valuePm, valuePm - expected.highPm);
  const bandPm =
    limits.lowerPm === null || limits.upperPm === null ? 0 : limits.upperPm - limits.lowerPm;
  return offPm > Math.max(farResolutions * gauge.resolutionPm, bandPm);
}

/** Far as such, or what no stock could be, or further from the others than this gauge has ever been from itself. */
function isFarOff(reading: DoubtedReading, facts: SlipFacts, expected: ExpectedReading): boolean {
  if (isFar(reading, facts, expected) || isNoStock(reading, facts, expected)) return true;
  const { repeatPm, repeatDegrees = 0, gauge } = facts;
  if (expected.from !== 'readings' || repeatPm === null || repeatDegrees < historyDegrees) {
    return false;
  }
  const offPm = Math.max(expected.lowPm - reading.valuePm, reading.valuePm - expected.highPm);
  return offPm > farHistory * Math.max(repeatPm, gauge.resolutionPm);
}

function endOfRange({ valuePm }: DoubtedReading, { gauge }: SlipFacts): number | null {
  const { rangeLowPm, rangeHighPm } = gauge;
  if (rangeHighPm !== null && valuePm > rangeHighPm) return rangeHighPm;
  return rangeLowPm !== null && valuePm < rangeLowPm ? rangeLowPm : null;
}
