import type { Feature } from '@/lib/schema/feature';
import type { Cut } from '@/lib/schema/fit';
import type { Cell } from './cells';
import type { Pool } from './gauge-history';
import type { GaugeSpread } from './gauge-spreads';
import type { GaugeFacts } from './size';
import type { Standing } from './standing';
import { emptyStandingMemory, type StandingMemory } from './standing-memory';

/** One cell as it was worked out, with what it was worked out from. */
export type CellRecord = {
  key: string;
  feature: Feature;
  /** Of its first reading, whatever became of that. */
  firstSeq: number;
  /** The cell by its drawing's limits; never changed, only replaced. */
  cell: Cell;
  /** Of its readings since the last cut, and of those between two cuts before: each set of the same metal. */
  spreads: readonly (readonly GaugeSpread[])[];
  /** What the history said of its gauge when its size was worked out. */
  pool: Pool | undefined;
};

/** What was worked out of the cells of one job before; given back to `cellsOf` it saves that work. */
export type CellsMemory = {
  standing: StandingMemory;
  features: readonly Feature[];
  featureById: ReadonlyMap<string, Feature>;
  gauges: readonly GaugeFacts[];
  gaugeById: Map<string, GaugeFacts>;
  cuts: readonly Cut[];
  /** By cell, the ids of the last readings before each of its cuts, in the order of their places. */
  cutsOf: ReadonlyMap<string, readonly string[]>;
  /** Every cell that has a reading, also of a feature that is not there; what has left is dropped when it is next worked out. */
  members: Map<string, Standing[]>;
  /** In the order of the first reading of each. */
  records: CellRecord[];
  recordOf: Map<string, CellRecord>;
};

/** Before anything was worked out. */
export function emptyCellsMemory(): CellsMemory {
  return {
    standing: emptyStandingMemory(),
    features: [],
    featureById: new Map(),
    gauges: [],
    gaugeById: new Map(),
    cuts: [],
    cutsOf: new Map(),
    members: new Map(),
    records: [],
    recordOf: new Map(),
  };
}
