import type { Run } from '@/lib/schema/run';
import type { JobSheet } from '@/lib/schema/sheet';
import { cellKey, cellsOf } from './cells';
import { runPlaces } from './run-places';
import type { RunSeries } from './run-series';

/**
 * A run of several features alike as columns, in the order made: turn, departure from its own nominal, and how
 * each is named. The turns of `runPlaces` and the sizes of `cellsOf`, as the run chart has them; turns nobody
 * measured have no row. Cost: that of the cells of the job.
 */
export function alikeSeries(
  sheet: Pick<JobSheet, 'readings' | 'corrections' | 'gauges' | 'features' | 'cuts' | 'pieces'>,
  run: Pick<Run, 'featureId' | 'alikeIds'>,
): RunSeries & { marks: string[] } {
  const live = new Map(
    sheet.features.filter(({ struckAt }) => struckAt === null).map((one) => [one.id, one]),
  );
  const features = [run.featureId, ...run.alikeIds].flatMap((id) => live.get(id) ?? []);
  const cells = cellsOf(sheet);
  const series = { ordinals: [] as number[], sizesPm: [] as number[], marks: [] as string[] };
  for (const { piece, feature, ordinal, mark } of runPlaces(features, sheet.pieces, cells)) {
    const size = cells.byKey.get(cellKey(piece.id, feature.id))?.size ?? null;
    if (size === null) continue;
    series.ordinals.push(ordinal);
    series.sizesPm.push(size.valuePm - feature.nominalPm);
    series.marks.push(mark);
  }
  return series;
}
