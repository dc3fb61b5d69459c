import { jobView } from '@/lib/rules/job-view';
import type { RunView } from '@/lib/rules/run-view';
import type { Correction } from '@/lib/schema/reading';
import type { Feature } from '@/lib/schema/feature';
import type { Gauge } from '@/lib/schema/gauge';
import type { Run, RunEvent } from '@/lib/schema/run';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleSheet } from './example-sheet';
import { mm, readingOf, um } from './make';

/**
 * A run of its own: sizes in micrometres from the nominal of 12 mm, in the order of the pieces; a list is
 * several readings of one piece, null a piece that was not measured.
 */
export type SmallRun = {
  sizes: readonly (number | null | readonly number[])[];
  run?: Partial<Run>;
  feature?: Partial<Feature>;
  gauge?: Partial<Gauge>;
  events?: readonly (Partial<RunEvent> & Pick<RunEvent, 'kind' | 'afterOrdinal'>)[];
  corrections?: (sheet: JobSheet) => Correction[];
  /** How many pieces the batch has; as many as there are sizes unless said. */
  of?: number;
};

/** The sheet of a small run: the example with only its crank web, as many pieces as wanted. */
export function smallRunSheet(small: SmallRun): JobSheet {
  const sheet = exampleSheet();
  const boss = { ...sheet.features.find(({ balloon }) => balloon === '9')!, ...small.feature };
  const part = sheet.parts.find(({ id }) => id === boss.partId)!;
  const plain = sheet.pieces.find(({ partId }) => partId === part.id)!;
  const gauge = { ...sheet.gauges.find(({ name }) => name === 'Mic 2')!, ...small.gauge };
  const pieces = Array.from({ length: small.of ?? small.sizes.length }, (_, index) => ({
    ...plain,
    id: `piece ${index + 1}`,
    ordinal: index + 1,
    mark: `W${index + 1}`,
  }));
  let count = 0;
  const readings = small.sizes.flatMap((size, index) =>
    (size === null ? [] : typeof size === 'number' ? [size] : size).map((microns) => {
      count += 1;
      return readingOf(count, {
        pieceId: `piece ${index + 1}`,
        featureId: boss.id,
        gaugeId: gauge.id,
        valuePm: 12 * mm + Math.round(microns * um),
        text: (12 + microns / 1000).toFixed(3),
      });
    }),
  );
  const made: JobSheet = {
    ...sheet,
    parts: [part],
    pieces,
    features: [boss],
    fits: [],
    runs: sheet.runs.map((run) => ({ ...run, ...small.run })),
    runEvents: (small.events ?? []).map((event, index) => ({
      ...sheet.runEvents[0]!,
      id: `event ${index}`,
      note: '',
      offsetPm: null,
      offsetDial: null,
      at: `2026-03-14T10:${String(index).padStart(2, '0')}:00Z`,
      ...event,
    })),
    gauges: [gauge],
    readings,
  };
  return { ...made, corrections: small.corrections?.(made) ?? [] };
}

/** The run of such a sheet. */
export function smallRun(small: SmallRun): RunView {
  return jobView(smallRunSheet(small)).runs[0]!;
}

/** Sizes that wander without drifting: a fixed table of normal scores (no randomness), times a scale. */
export function wander(count: number, scale: number, middle = 0): number[] {
  return Array.from({ length: count }, (_, i) => middle + scale * scores[i % scores.length]!);
}

/** Fifty figures made up for these tests to scatter about nothing, without a trend to speak of. */
const scores = [
  0.34, -0.98, 1.21, -0.27, 0.06, -1.35, 0.77, 0.51, -0.62, 1.58, -0.11, -0.83, 0.92, -1.74, 0.25,
  0.68, -0.45, 1.07, -0.2, -1.12, 0.43, 1.36, -0.71, 0.12, -0.36, 0.85, -1.5, 0.58, -0.05, 1.14,
  -0.9, 0.29, -0.55, 1.72, -1.02, 0.19, 0.73, -0.33, -1.24, 0.99, -0.16, 0.62, -0.78, 0.4, 1.28,
  -1.42, 0.02, 0.54, -0.66, -0.08,
];
