import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { nothingToMake } from '@/lib/rules/nothing-to-make';
import { smallJob, type SmallJob } from './small-job';

const six = (microns: number) => Array.from({ length: 6 }, () => microns);

/** The example with the first `count` liners and pistons only, and what of them is measured. */
function of(count: number, job: SmallJob, scrapped = '') {
  const { sheet } = smallJob(job);
  const pieces = sheet.pieces
    .filter(({ mark, ordinal }) => !/^[LP]\d/.test(mark) || ordinal <= count)
    .map((piece) => (piece.mark === scrapped ? { ...piece, fate: 'scrapped' as const } : piece));
  const view = jobView({ ...sheet, pieces });
  const found = nothingToMake(view.fits[0]!);
  const marks = new Map(pieces.map(({ id, mark }) => [id, mark]));
  return JSON.parse(
    JSON.stringify(found, (_, value: unknown) => marks.get(value as string) ?? value),
  ) as unknown;
}

describe('nothingToMake', () => {
  it('asks for the first bore while nothing is measured', () => {
    expect(of(2, {})).toEqual({ kind: 'measure first', pieceId: 'L1' });
  });

  it('is nothing while a piece has a partner to be made to', () => {
    expect(of(2, { bores: [six(10)] })).toBeNull();
    expect(of(2, { shafts: [six(0)] })).toBeNull();
  });

  it('names the shafts that wait, and the bore to measure for them', () => {
    const paired = { bores: [six(10)], shafts: [six(0)] };
    expect(of(3, paired)).toEqual({ kind: 'no partner', pieceIds: ['P2', 'P3'], measureId: 'L2' });
  });

  it('says that no bore is left where the last one is scrapped', () => {
    const paired = { bores: [six(10), six(20)], shafts: [six(0)] };
    expect(of(2, paired, 'L2')).toEqual({ kind: 'no partner', pieceIds: ['P2'], measureId: null });
  });

  it('names a bore that nobody waits for, and is done when all have a size', () => {
    const paired = { bores: [six(10)], shafts: [six(0)] };
    expect(of(2, paired, 'P2')).toEqual({ kind: 'no size', pieceIds: ['L2'] });
    expect(of(1, paired)).toEqual({ kind: 'all made' });
    expect(of(1, paired, 'P1')).toEqual({ kind: 'no pieces' });
  });
});
