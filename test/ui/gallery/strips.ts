import type { StripData } from '@/app/ui/strip/strip-data';

/** Whole pm of a length typed in mm to three places or in inches to four. */
export const mm = (value: number) => Math.round(value * 1e6) * 1000;
export const inch = (value: number) => Math.round(value * 1e6) * 25_400;

const partner = {
  mark: 'L5',
  name: 'bore',
  sizePm: mm(18.008),
  expandedPm: mm(0.001),
  lowerPm: mm(18),
  upperPm: mm(18.018),
};

/** P5 outside, made to L5, as in the drawings: limits 17.996 to 18.000, aim 17.998. */
const piston: StripData = {
  unit: 'mm',
  decimal: '.',
  resolutionPm: mm(0.001),
  lowerPm: mm(17.996),
  upperPm: mm(18),
  guardPm: 800_000,
  aimPm: mm(17.998),
  partner,
};

const counted = (...values: number[]) =>
  values.map((value, index) => ({
    valuePm: mm(value),
    state: 'counted' as const,
    last: index === values.length - 1,
  }));

/** Each variant of the drawing `strip-variants`, by its title there. */
export const stripVariants: Record<string, StripData> = {
  Inside: {
    ...piston,
    readings: counted(17.998, 17.999, 17.999, 17.999),
    size: { valuePm: 17_998_750_000, expandedPm: mm(0.001), state: 'inside' },
  },
  Unsure: {
    ...piston,
    readings: counted(17.9995, 18, 18),
    size: { valuePm: 17_999_850_000, expandedPm: mm(0.001), state: 'unsure' },
  },
  Out: {
    ...piston,
    readings: counted(18.002, 18.003, 18.002),
    size: { valuePm: 18_002_300_000, expandedPm: mm(0.001), state: 'out' },
  },
  'Too few readings': { ...piston, readings: counted(17.9985), size: null },
  'Off the strip, and held': {
    ...piston,
    readings: [
      ...counted(17.998, 17.999, 17.999, 17.999).map((reading) => ({ ...reading, last: false })),
      { valuePm: mm(18.498), state: 'held', last: true },
    ],
    size: { valuePm: 17_998_750_000, expandedPm: mm(0.001), state: 'inside' },
  },
  'Struck out and doubtful': {
    ...piston,
    readings: [
      { valuePm: mm(17.999), state: 'counted' },
      { valuePm: mm(17.999), state: 'counted' },
      { valuePm: 18_001_500_000, state: 'held' },
      { valuePm: mm(18.004), state: 'struck' },
    ],
    size: { valuePm: mm(17.999), expandedPm: mm(0.001), state: 'inside' },
  },
  'Before the cut': {
    ...piston,
    partner: null,
    live: true,
    lowerPm: mm(17.998),
    upperPm: mm(18.002),
    aimPm: mm(18),
    guardPm: 0,
    size: { valuePm: mm(18.086), expandedPm: mm(0.001), state: 'to cut', label: 'now' },
    expected: { valuePm: mm(18.049), expandedPm: mm(0.002) },
    stopAt: { valuePm: mm(18.006) },
    spanPm: { fromPm: mm(17.99), toPm: mm(18.092) },
  },
  'Stock still to cut': {
    ...piston,
    live: true,
    readings: counted(18.086),
    size: { valuePm: mm(18.086), expandedPm: mm(0.001), state: 'to cut' },
  },
  Inches: {
    unit: 'in',
    decimal: '.',
    resolutionPm: inch(0.0001),
    lowerPm: inch(0.9842),
    upperPm: inch(0.9848),
    guardPm: 508_000,
    aimPm: inch(0.9845),
    readings: [
      { valuePm: inch(0.9844), state: 'counted' },
      { valuePm: 25_005_030_000, state: 'counted' },
      { valuePm: inch(0.9844), state: 'counted', last: true },
    ],
    size: { valuePm: 25_004_268_000, expandedPm: 1_270_000, state: 'inside' },
  },
  'As drawn': {
    unit: 'mm',
    decimal: '.',
    resolutionPm: mm(0.001),
    lowerPm: mm(18),
    upperPm: mm(18.018),
    drawn: true,
    guardPm: 800_000,
    readings: counted(18.016, 18.016, 18.015, 18.016, 18.017),
    size: { valuePm: mm(18.016), expandedPm: mm(0.001), state: 'near' },
  },
  'No limits at all': {
    unit: 'mm',
    decimal: ',',
    resolutionPm: mm(0.01),
    lowerPm: null,
    upperPm: null,
    readings: counted(52.01, 52.03),
    spanPm: { fromPm: mm(51.9), toPm: mm(52.1) },
  },
  'One limit only': {
    unit: 'mm',
    decimal: '.',
    resolutionPm: mm(0.001),
    lowerPm: null,
    upperPm: mm(0.02),
    guardPm: mm(0.001),
    readings: counted(0.012, 0.013),
    size: { valuePm: mm(0.012), expandedPm: mm(0.002), state: 'inside' },
  },
  'Forty equal readings': {
    ...piston,
    readings: counted(...Array.from({ length: 40 }, () => 17.998)),
    size: { valuePm: mm(17.998), expandedPm: 400_000, state: 'inside' },
  },
  'Off both ends': {
    ...piston,
    partner: null,
    readings: counted(17.9, 18.2),
    size: { valuePm: mm(18.05), expandedPm: mm(0.3), state: 'out' },
  },
};

const liner: StripData = {
  unit: 'mm',
  decimal: '.',
  resolutionPm: mm(0.001),
  lowerPm: mm(18),
  upperPm: mm(18.018),
};
const small = (value: number, state: 'inside' | 'near' | 'unsure' | 'out' | 'to cut') => ({
  ...liner,
  size: { valuePm: mm(value), expandedPm: mm(0.002), state },
});

export const smallVariants: Record<string, StripData> = {
  Inside: small(18.008, 'inside'),
  'Near the bottom': small(18.002, 'near'),
  'Near the top': small(18.016, 'near'),
  Unsure: small(18.017, 'unsure'),
  'Out, small': small(17.997, 'out'),
  'Out, large': small(18.022, 'out'),
  'Off the strip': small(18.031, 'out'),
  'Stock to cut': { ...small(18.086, 'to cut'), aimPm: mm(18.009), live: true },
  Held: liner,
  'To make': { ...liner, aimPm: mm(18.009) },
  'With partner': { ...small(18.008, 'inside'), partner },
};
