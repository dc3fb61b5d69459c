'use client';

import { memo, useMemo, useState } from 'react';
import { cellKey } from '@/lib/rules/cells';
import { guardFactor } from '@/lib/rules/verdict';
import type { StripData } from '../strip/strip-data';
import { FittedStrip } from '../strip/fitted-strip';
import { stripSpan } from '../strip/strip-span';
import type { Bench } from './use-bench';

type Props = { bench: Bench; small: boolean };

/** The size strip of what is on the bench. Its scale stands while the piece does, whatever is read of it. */
export const BenchStrip = memo(function BenchStrip({ bench, small }: Props) {
  const { piece, feature, cell } = bench;
  const { lowerPm, upperPm } = cell.limits;
  // A cut begins a new piece of metal, and new limits a new picture: only then may the scale move.
  const key = [cellKey(piece.id, feature.id), lowerPm, upperPm, cell.earlier.length].join(' ');
  return <OpenStrip key={key} bench={bench} small={small} />;
});

function OpenStrip({ bench, small }: Props) {
  const { piece, feature } = bench;
  const data = useMemo(() => stripData(bench), [bench]);
  const [spanPm] = useState(() => spanAtOpening(data, feature.nominalPm));
  return (
    <FittedStrip
      data={{ ...data, spanPm }}
      name={`${piece.mark} ${feature.name.toLowerCase()}`}
      {...(small ? { size: 'card' as const } : {})}
    />
  );
}

function spanAtOpening(data: StripData, nominalPm: number) {
  const { readings = [] } = data;
  const size = data.size ?? null;
  const isEmpty = size === null && readings.length === 0;
  return stripSpan(data, {
    sizesPm:
      size === null
        ? isEmpty
          ? [nominalPm]
          : []
        : [size.valuePm - size.expandedPm, size.valuePm + size.expandedPm],
    readingsPm: readings.filter(({ state }) => state === 'counted').map(({ valuePm }) => valuePm),
  });
}

/** What the strip draws of a bench. */
function stripData(bench: Bench): StripData {
  const { cell, chosen, partner, partnerStandardPm, last, resolutionPm } = bench;
  const { size, verdict, limits } = cell;
  const outer = partner?.side === 'external' ? partner : null;
  return {
    unit: chosen.unit,
    decimal: chosen.decimal,
    resolutionPm,
    ...limits,
    drawn: cell.limitsFrom === 'drawing',
    quarters: bench.view.runs.some(
      ({ run, feature }) => run.zones && feature.id === bench.feature.id,
    ),
    ...(size === null
      ? {}
      : { guardPm: guardFactor * Math.hypot(size.standardPm, partnerStandardPm) }),
    aimPm: outer?.aimPm ?? null,
    live: (outer?.target ?? null) !== null && cell.readings.length > 0,
    partner:
      outer === null
        ? null
        : {
            mark: outer.piece.mark,
            name: outer.feature.name.toLowerCase(),
            sizePm: outer.size?.valuePm ?? null,
            expandedPm: outer.size?.expandedPm ?? null,
            lowerPm: null,
            upperPm: null,
          },
    readings: cell.readings.map((reading) => ({
      valuePm: reading.valuePm,
      state: reading.state,
      last: reading === last,
    })),
    size:
      size === null
        ? null
        : {
            valuePm: size.valuePm,
            expandedPm: size.expandedPm,
            state: verdict?.state ?? null,
          },
  };
}
