import type { AxisTurns } from '../charts/axis-turns';

/** A chart as plain shapes, for a drawing of its own: ordinals along, heights in steps up. */
export type Drawing = {
  /** Over the plot: from what and in what the heights are. */
  heightTitle: string;
  along: { min: number; max: number };
  up: { min: number; max: number };
  /** The turns named along the axis; null where only a stretch of them is shown, by number. */
  turns: AxisTurns | null;
  /** The finest step of the upright scale, in steps. */
  finest: number;
  decimal: '.' | ',';
  /** The outline of what is hatched, behind all else; null where nothing is. */
  hatched: readonly DrawnAt[] | null;
  lines: { at: readonly DrawnAt[]; width: number; dash?: string }[];
  /** Upright bars through points. */
  bars: { ordinal: number; low: number; high: number }[];
  points: (DrawnAt & { shape: PointShape })[];
  /** Lines from side to side, named at their right end where they have a name. */
  across: { height: number; width: number; dash?: string; name: string }[];
  /** Named at the right end and not drawn. */
  ends: { height: number; name: string }[];
  /** Said beside a place on the plot, on the side of it that is free. */
  words: (DrawnAt & { text: string; free: 'over' | 'under' })[];
  events: { ordinal: number; title: string }[];
};

export type DrawnAt = { ordinal: number; height: number };

/** A dot; hollow; outside or signalled; ringed because it is odd; struck because it is set aside. */
export type PointShape = 'dot' | 'hollow' | 'diamond' | 'ringed' | 'struck';
