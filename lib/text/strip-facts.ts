import type { DecimalMark, LengthUnit } from '@/lib/units/picometres';

/** What a size strip says of one feature of one piece, drawn or read aloud. Lengths are whole pm. */
export type StripFacts = {
  /** The unit shown; it changes the scale, never a reading. */
  unit: LengthUnit;
  decimal: DecimalMark;
  /** Step of the gauge; no tick and no figure is finer. Null while no gauge is chosen. */
  resolutionPm: number | null;
  lowerPm: number | null;
  upperPm: number | null;
  /** The label says that the limits are the drawing's own. */
  drawn?: boolean;
  /** What is aimed at: the notch. */
  aimPm?: number | null;
  partner?: StripPartner | null;
  readings?: readonly StripReading[];
  size?: StripSize | null;
  /** The size the next cut is expected to give. */
  expected?: { valuePm: number; expandedPm: number } | null;
  /** Where to stop turning, when something is left for another process. */
  stopAt?: { valuePm: number } | null;
};

export type StripPartner = {
  mark: string;
  /** What it is called: "bore", "outside". */
  name: string;
  /** Null while it is not measured: then its limits are drawn. */
  sizePm: number | null;
  expandedPm: number | null;
  lowerPm: number | null;
  upperPm: number | null;
};

export type StripReading = {
  valuePm: number;
  state: 'counted' | 'held' | 'struck';
  /** The reading taken last. */
  last?: boolean;
};

export type StripSize = {
  valuePm: number;
  expandedPm: number;
  /** Null where there are no limits to judge it by. */
  state: 'inside' | 'near' | 'unsure' | 'out' | 'to cut' | null;
  /** A word over the mark: "now" on Cut. */
  label?: string;
};
