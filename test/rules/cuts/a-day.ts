import { jobView, type JobView } from '@/lib/rules/job-view';
import type { Cut } from '@/lib/schema/fit';
import type { Piece } from '@/lib/schema/part';
import type { Correction, Reading } from '@/lib/schema/reading';
import { exampleSheet } from '../example-sheet';
import { correctionOf, mm, readingOf, um } from '../make';
import { smallJob } from '../small-job';
import { aCut } from './a-cut';

/** What was done at the machine, in order: a size in micrometres from 18 mm, or a cut that asked for so many. */
export type Done =
  | readonly [mark: string, act: 'read', microns: number, more?: Partial<Reading>]
  | readonly [mark: string, act: 'cut', asked: number, more?: Partial<Cut>]
  | readonly [mark: string, act: 'strike'];

/** Three cuts of a piece that started at 0.400 over: 0.100 asked each, and what is said came off. */
export const cutTo = (mark: string, got: readonly number[], from = 400): Done[] => {
  let size = from;
  return [
    [mark, 'read', from] as const,
    ...got.flatMap((microns): Done[] => {
      size -= microns;
      return [
        [mark, 'cut', 100],
        [mark, 'read', size],
      ];
    }),
  ];
};

/**
 * The example's liners, measured, and its pistons, cut on the outside as they are told to be. A piece may have its
 * feature named: `P6:5`. `strike` strikes out the last reading of a piece.
 */
export function aDay(done: readonly Done[], pieces: Record<string, Partial<Piece>> = {}): JobView {
  const bores = Array.from({ length: 8 }, () => [10, 10, 10]);
  const { sheet } = smallJob({ bores });
  const mic = exampleSheet().readings.findLast(
    ({ featureId }) => featureId === sheet.features.find(({ balloon }) => balloon === '4')!.id,
  )!.gaugeId;
  let seq = Math.max(...sheet.readings.map((one) => one.seq));
  const readings: Reading[] = [];
  const corrections: Correction[] = [];
  const cuts: Cut[] = [];
  for (const [name, act, amount, more] of done) {
    const [mark, balloon = '4'] = name.split(':');
    const at = {
      pieceId: sheet.pieces.find((piece) => piece.mark === mark)!.id,
      featureId: sheet.features.find((feature) => feature.balloon === balloon)!.id,
      jobId: sheet.job.id,
    };
    const isHere = (one: { pieceId: string; featureId: string }) =>
      one.pieceId === at.pieceId && one.featureId === at.featureId;
    const last = readings.findLast(isHere);
    seq += 1;
    if (act === 'read') {
      const valuePm = 18 * mm + amount! * um;
      readings.push({ ...readingOf(seq), ...at, gaugeId: mic, valuePm, ...(more as object) });
    } else if (act === 'strike') {
      corrections.push({ ...correctionOf(seq, { kind: 'void' }), readingId: last!.id });
    } else {
      const ordinal = cuts.filter(isHere).length + 1;
      const place = { id: `cut ${seq}`, lastReadingId: last?.id ?? null, askedPm: amount! * um };
      cuts.push(aCut(ordinal, { ...at, ...place, deviceSeq: seq, ...(more as object) }));
    }
  }
  return jobView({
    ...sheet,
    pieces: sheet.pieces.map((piece) => ({ ...piece, ...pieces[piece.mark] })),
    readings: [...sheet.readings, ...readings],
    corrections,
    // The book lists cuts by piece, whatever the order they were made in.
    cuts: cuts.toSorted((a, b) => (a.pieceId < b.pieceId ? -1 : a.pieceId > b.pieceId ? 1 : 0)),
  });
}
