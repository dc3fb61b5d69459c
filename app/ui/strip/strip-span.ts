import { usualResolutionPm } from '@/lib/text/usual-resolution';
import { partnerStretch, type SpanPm, type StripData } from './strip-data';

/** What a strip is scaled by: never the readings still to come. */
export type SpanFacts = Pick<
  StripData,
  'unit' | 'resolutionPm' | 'lowerPm' | 'upperPm' | 'aimPm' | 'partner' | 'live' | 'expected'
>;

/** What was known when the piece was opened. */
export type KnownSizes = {
  /** Both ends of the bar of a size; always covered. */
  sizesPm?: readonly number[];
  /** Readings; covered within two band widths of the limits. */
  readingsPm?: readonly number[];
};

const padShare = 0.08;
const bandMostShare = 0.65;
const bandLeastShare = 0.2;
const bandLeastShareCut = 0.04;
const partnerWithinBands = 4;
const readingsWithinBands = 2;

/**
 * The stretch of scale a strip covers, pm, before its ends are snapped to ticks.
 *
 * Covers the limits, the notch, the partner if it is within four band widths, the expected size, and what
 * is `known`; then 8 % at each end; then widened or trimmed so that the band takes 20 to 65 % of the width
 * (down to 4 % for a piece being cut, which shows its stock). Trimming takes from both sides of the band
 * in proportion. Give `known` once, when the piece is opened, and keep the answer: then no new
 * reading moves the scale. Without limits a band is assumed about the first thing known.
 */
export function stripSpan(facts: SpanFacts, known: KnownSizes = {}): SpanPm {
  const band = assumedBand(facts, known);
  const bandPm = band.toPm - band.fromPm;
  const covered = [band.fromPm, band.toPm, ...(known.sizesPm ?? [])];
  if (isNumber(facts.aimPm)) covered.push(facts.aimPm);
  const within = (pm: number, bands: number) =>
    pm >= band.fromPm - bands * bandPm && pm <= band.toPm + bands * bandPm;
  covered.push(...(known.readingsPm ?? []).filter((pm) => within(pm, readingsWithinBands)));
  const partner = partnerStretch(facts.partner);
  if (
    partner !== null &&
    partner.fromPm - band.toPm <= partnerWithinBands * bandPm &&
    band.fromPm - partner.toPm <= partnerWithinBands * bandPm
  ) {
    covered.push(partner.fromPm, partner.toPm);
  }
  if (isNumber(facts.expected?.valuePm)) {
    const { valuePm, expandedPm } = facts.expected;
    covered.push(valuePm - expandedPm, valuePm + expandedPm);
  }

  const cut = facts.live === true || isNumber(facts.expected?.valuePm);
  return keepBandShare(padded(covered), band, cut ? bandLeastShareCut : bandLeastShare);
}

/**
 * The band a scale is built on, pm: the limits; with one limit, twice as far inside it as the aim is, or
 * twenty steps of the gauge; with none, that width about the aim, the first thing known or the partner.
 */
export function assumedBand(facts: SpanFacts, known: KnownSizes = {}): SpanPm {
  const { lowerPm, upperPm } = facts;
  if (lowerPm !== null && upperPm !== null && upperPm > lowerPm) {
    return { fromPm: lowerPm, toPm: upperPm };
  }
  const limitPm = lowerPm ?? upperPm;
  const widthPm = assumedWidth(facts, limitPm);
  if (lowerPm !== null && upperPm !== null) {
    const middlePm = (lowerPm + upperPm) / 2;
    const halfPm = Math.max(widthPm, lowerPm - upperPm) / 2;
    return { fromPm: middlePm - halfPm, toPm: middlePm + halfPm };
  }
  if (lowerPm !== null) return { fromPm: lowerPm, toPm: lowerPm + widthPm };
  if (upperPm !== null) return { fromPm: upperPm - widthPm, toPm: upperPm };
  const partner = partnerStretch(facts.partner);
  const middlePm =
    facts.aimPm ??
    facts.expected?.valuePm ??
    known.sizesPm?.[0] ??
    known.readingsPm?.[0] ??
    (partner === null ? 0 : (partner.fromPm + partner.toPm) / 2);
  return { fromPm: middlePm - widthPm / 2, toPm: middlePm + widthPm / 2 };
}

/** Twenty steps of the gauge, where nothing else says how wide a band is. */
function assumedWidth(facts: SpanFacts, limitPm: number | null): number {
  if (limitPm !== null && isNumber(facts.aimPm) && facts.aimPm !== limitPm) {
    return 2 * Math.abs(facts.aimPm - limitPm);
  }
  return 20 * usualResolutionPm(facts.resolutionPm, facts.unit);
}

function padded(covered: readonly number[]): SpanPm {
  const fromPm = Math.min(...covered);
  const toPm = Math.max(...covered);
  const padPm = padShare * (toPm - fromPm);
  return { fromPm: fromPm - padPm, toPm: toPm + padPm };
}

function keepBandShare(span: SpanPm, band: SpanPm, leastShare: number): SpanPm {
  const bandPm = band.toPm - band.fromPm;
  const widthPm = span.toPm - span.fromPm;
  const leastPm = bandPm / bandMostShare;
  const mostPm = bandPm / leastShare;
  if (widthPm < leastPm) {
    const morePm = (leastPm - widthPm) / 2;
    return { fromPm: span.fromPm - morePm, toPm: span.toPm + morePm };
  }
  if (widthPm > mostPm) {
    const kept = (mostPm - bandPm) / (widthPm - bandPm);
    return {
      fromPm: band.fromPm - kept * (band.fromPm - span.fromPm),
      toPm: band.toPm + kept * (span.toPm - band.toPm),
    };
  }
  return span;
}

function isNumber(value: number | null | undefined): value is number {
  return typeof value === 'number';
}
