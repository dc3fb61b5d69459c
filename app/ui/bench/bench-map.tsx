'use client';

import { memo } from 'react';
import type { Standing } from '@/lib/rules/standing';
import type { FeatureKind } from '@/lib/schema/feature';
import { blindTaken } from '@/lib/text/bench-blind';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import type { StationCell } from './station-cells';
import { StationMap } from './station-map';
import type { Bench } from './use-bench';

type Props = { bench: Bench; onPick: (station: string, direction: string) => void; low: boolean };

/** The station map of the feature on the bench: what was read where, and where the next reading goes. */
export const BenchMap = memo(function BenchMap({ bench, onPick, low }: Props) {
  const { feature, cell, chosen, next, last } = bench;
  const { stations, directions } = feature;
  const seen = (one: StationCell): StationCell => {
    if (bench.blind === null || one.text === null) return one;
    return one.state === 'struck' ? { text: null, state: 'empty' } : { ...one, text: blindTaken };
  };
  return (
    <StationMap
      kind={drawnAs(feature.kind)}
      stations={stations}
      directions={directions}
      cells={directions.map((direction) =>
        stations.map((station) =>
          seen(
            stationCell(
              cell.readings.filter((r) => r.station === station && r.direction === direction),
              chosen,
            ),
          ),
        ),
      )}
      next={next}
      last={last}
      onPick={onPick}
      low={low}
    />
  );
});

/** What a place shows: its last reading that stands, else the last one struck. */
export function stationCell(readings: readonly Standing[], shown: Shown): StationCell {
  const standing = readings.findLast(({ state }) => state !== 'struck') ?? readings.at(-1);
  if (standing === undefined) return { text: null, state: 'empty' };
  const text = shownLength(standing.valuePm, standing.resolutionPm, shown);
  return { text, state: standing.state };
}

function drawnAs(kind: FeatureKind): 'bore' | 'outside' | 'length' {
  if (kind === 'bore' || kind === 'slot') return 'bore';
  return kind === 'outside' ? 'outside' : 'length';
}
