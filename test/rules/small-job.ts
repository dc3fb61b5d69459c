import { jobView, type JobView } from '@/lib/rules/job-view';
import type { Fit, Pair } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';
import { exampleUncut } from './example-sheet';
import { mm, readingOf, um } from './make';

/** Sizes in whole micrometres from 18 mm, one list of readings a piece, one at each place of the plan. */
export type SmallJob = {
  bores?: readonly (readonly number[])[];
  shafts?: readonly (readonly number[])[];
  fit?: Partial<Fit>;
  pairs?: readonly (Partial<Pair> & Pick<Pair, 'state'> & { bore: number; shaft: number })[];
};

/** The example with other liner bores and pistons, or none. Bore n is the piece L(n+1), shaft n the piece P(n+1). */
export function smallJob({ bores = [], shafts = [], fit = {}, pairs = [] }: SmallJob): JobView {
  const sheet = exampleUncut();
  const piece = (mark: string) => sheet.pieces.find((one) => one.mark === mark)!.id;
  const feature = (balloon: string) => sheet.features.find((one) => one.balloon === balloon)!;
  const gaugeId = sheet.gauges[0]!.id;
  let count = 0;
  const read = (prefix: string, balloon: string, lists: readonly (readonly number[])[]) =>
    lists.flatMap((list, index) =>
      list.map((microns, place) => {
        count += 1;
        const { id: featureId, stations, directions } = feature(balloon);
        return readingOf(count, {
          pieceId: piece(`${prefix}${index + 1}`),
          featureId,
          gaugeId,
          valuePm: 18 * mm + microns * um,
          station: stations[Math.floor(place / 2)]!,
          direction: directions[place % 2]!,
        });
      }),
    );
  const small: JobSheet = {
    ...sheet,
    fits: sheet.fits.map((one) => ({ ...one, ...fit })),
    pairs: pairs.map(({ bore, shaft, ...over }, index) => ({
      id: `pair ${index}`,
      version: 1,
      createdAt: '2026-03-14T11:00:00Z',
      struckAt: null,
      jobId: sheet.job.id,
      fitId: sheet.fits[0]!.id,
      internalPieceId: piece(`L${bore + 1}`),
      externalPieceId: piece(`P${shaft + 1}`),
      mark: '',
      clearancePm: null,
      uncertaintyPm: null,
      decidedAt: null,
      personId: null,
      ...over,
    })),
    readings: [...read('L', '1', bores), ...read('P', '4', shafts)],
  };
  return jobView(small);
}

/** The pairs of the first fit as "L1 P2 10": marks and clearance in whole micrometres. */
export function pairsOf(view: JobView): string[] {
  const mark = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)!.mark;
  return view.fits[0]!.pairs.map(
    (pair) =>
      `${mark(pair.internalPieceId)} ${mark(pair.externalPieceId)} ${Math.round(pair.clearancePm / um)}`,
  );
}
