export type StripSizeName = 'large-phone' | 'large-tablet' | 'small' | 'card';
export type LargeSize = 'large-phone' | 'large-tablet';
export type SmallSize = 'small' | 'card';

/** Lanes and weights of a large strip, px, from the top. */
export type LargeMetrics = {
  labelLane: number;
  dotLane: number;
  bandLane: number;
  height: number;
  labelPx: number;
  numeralPx: number;
  dotR: number;
  lastDotR: number;
  dotPitch: number;
  /** Centre of the lowest dot above the band. */
  dotRise: number;
  markWidth: number;
  barHeight: number;
  unsureHeight: number;
  expectedHeight: number;
  barLeastHalf: number;
};

export const largeMetrics: Record<LargeSize, LargeMetrics> = {
  'large-phone': {
    labelLane: 21,
    dotLane: 38,
    bandLane: 32,
    height: 124,
    labelPx: 13,
    numeralPx: 13,
    dotR: 3.5,
    lastDotR: 4.5,
    dotPitch: 9,
    dotRise: 7,
    markWidth: 3.5,
    barHeight: 6,
    unsureHeight: 10,
    expectedHeight: 8,
    barLeastHalf: 3,
  },
  'large-tablet': {
    labelLane: 25,
    dotLane: 66,
    bandLane: 58,
    height: 186,
    labelPx: 17,
    numeralPx: 17,
    dotR: 5.5,
    lastDotR: 7,
    dotPitch: 14,
    dotRise: 11,
    markWidth: 6,
    barHeight: 10,
    unsureHeight: 16,
    expectedHeight: 13,
    barLeastHalf: 5,
  },
};

/** Below this a large strip is too narrow for its numerals, px. */
export const largeLeastWidthPx = 296;

/** From this width on the tablet's lanes are used, px. */
export const tabletFromPx = 560;

/** Lengths of the minor, medium and major ticks below the baseline, px. */
export const tickLengths = { minor: 6, medium: 10, major: 14 };

/** A numeral or label this near another one touches it, px. */
export const touchPx = 6;

export const notch = { width: 16, height: 13 };

/** What is off the strip: a plate at the end, and the break in the baseline before it, px. */
export const offPlate = {
  width: 34,
  height: 18,
  point: 10,
  breakAt: 46,
  breakWidth: 17,
  breakHeight: 16,
};

export type SmallMetrics = {
  height: number;
  bandTop: number;
  baseline: number;
  notch: { width: number; height: number };
  plate: number;
};

export const smallMetrics: Record<SmallSize, SmallMetrics> = {
  small: { height: 18, bandTop: 4, baseline: 14, notch: { width: 8, height: 6 }, plate: 9 },
  card: { height: 24, bandTop: 5, baseline: 20, notch: { width: 8, height: 6 }, plate: 9 },
};
