import { describe, expect, it } from 'vitest';
import { pairMarkTaken } from '@/lib/rules/pair-mark-taken';
import { isRecord, pairRow } from '@/lib/rules/pair-row';
import { pairMoves, partnersOf } from '@/lib/rules/pair-moves';
import { pairRework, pairsShort } from '@/lib/rules/pair-rework';
import type { JobView } from '@/lib/rules/job-view';
import type { Pair } from '@/lib/schema/fit';
import { mm, um } from './make';
import { pairsOf, smallJob } from './small-job';

// Invented sizes, in whole micrometres from 18 mm; the pairings are worked out by hand beside each.

const six = (microns: number) => Array.from({ length: 6 }, () => microns);
const all = (...microns: number[]) => microns.map(six);
const markOf = (view: JobView) => (id: string | null) =>
  view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? null;
const idOf = (mark: string) => smallJob({}).sheet.pieces.find((piece) => piece.mark === mark)!.id;

describe('the pairing', () => {
  // L1 wants a shaft of 0, L2 one of 3. With 0, -3 and 8 to choose from: L1 P1 and L2 P3 are 0 and 5 off
  // (least together), L1 P2 and L2 P1 are 3 and 3 off (worst pair best).
  const sizes = { bores: all(10, 13), shafts: all(0, -3, 8) };
  const wide = { minPm: 0, maxPm: 20 * um, aimPm: 10 * um };

  it.each([
    [undefined, ['L1 P2 13', 'L2 P1 13']],
    ['worst best' as const, ['L1 P2 13', 'L2 P1 13']],
    ['closest' as const, ['L1 P1 10', 'L2 P3 5']],
  ])('is best for what the fit says: %s', (purpose, pairs) => {
    expect(pairsOf(smallJob({ ...sizes, fit: { ...wide, purpose } }))).toEqual(pairs);
  });

  it('that is most likely inside keeps clear of the limits, wherever the aim is', () => {
    const near = { bores: all(10), shafts: all(1, 0), fit: { aimPm: 9 * um } };
    expect(pairsOf(smallJob(near))).toEqual(['L1 P1 9']);
    const likely = { ...near, fit: { ...near.fit, purpose: 'most likely' as const } };
    expect(pairsOf(smallJob(likely))).toEqual(['L1 P2 10']);
  });

  it('leaves out a piece that a person has left out, and promises it nothing', () => {
    const fit = { leftOutPieceIds: [idOf('L1'), idOf('P2')] };
    const view = smallJob({ bores: all(10, 10), shafts: all(0, 0), fit });
    expect(pairsOf(view)).toEqual(['L2 P1 10']);
    expect(view.fits[0]!.withoutPartner).toEqual([]);
    expect(view.fits[0]!.toMake).toEqual([]);
    expect(view.fits[0]!.internals.map(({ leftOut }) => leftOut)[0]).toBe(true);
    // Its pair stays where it was final before.
    const final = { bore: 0, shaft: 1, state: 'final' as const, clearancePm: 10 * um };
    const decided = smallJob({ bores: all(10), shafts: all(1, 0), fit, pairs: [final] });
    expect(pairsOf(decided)).toEqual(['L1 P2 10']);
  });

  it('does not promise a bore to a shaft that is too large for it while a larger one is left out', () => {
    // The largest bore in play is 10, so 5 has metal to come off; with L2 in play it suits that one.
    const two = { bores: all(10, 15), shafts: [[], six(5)] };
    expect(smallJob(two).fits[0]!.externals[1]!.stillToCut).toBe(false);
    const out = smallJob({ ...two, fit: { leftOutPieceIds: [idOf('L2')] } });
    expect(out.fits[0]!.externals[1]!.stillToCut).toBe(true);
  });
});

describe('pairRework', () => {
  const works = (view: JobView, cut: 'internal' | 'external' = 'external') => {
    const mark = markOf(view);
    const found = pairRework(view.fits[0]!, cut);
    return (
      found && {
        ...found,
        works: found.works?.map(
          ({ internalPieceId, externalPieceId, work, toPm, takeOffPm }) =>
            `${work} ${mark(internalPieceId)} ${mark(externalPieceId)} ${(toPm - 18 * mm) / um} ${takeOffPm === null ? '-' : takeOffPm / um}`,
        ),
      }
    );
  };

  it('is nothing while every piece of the shorter side has a partner', () => {
    const view = smallJob({ bores: all(10, 20, 30), shafts: all(0, 10) });
    expect(pairsShort(view.fits[0]!)).toEqual({ most: 2, of: 2 });
    expect(works(view)).toBeNull();
    expect(works(smallJob({}))).toBeNull();
  });

  it('takes a shaft down to the aim where it is too tight for the bore left over', () => {
    // Both shafts suit L2 only; L1 wants 0. Taking P1 from 9 to 0 is less than P2 from 11.
    const view = smallJob({ bores: all(10, 20), shafts: all(9, 11) });
    expect(works(view)).toEqual({ most: 1, of: 2, works: ['cut external L1 P1 0 9'] });
  });

  it('opens a bore where the bores are to be worked on', () => {
    // P2 at 11 goes to L2; L1 is opened from 10 to 19, the aim for P1 at 9.
    const view = smallJob({ bores: all(10, 20), shafts: all(9, 11) });
    expect(works(view, 'internal')!.works).toEqual(['cut internal L1 P1 19 9']);
  });

  it('makes a piece anew where metal would have to be put on', () => {
    // L2 at 30 is 20 slack for either shaft: a new one of 20, or a new bore of 10 for P2.
    const view = smallJob({ bores: all(10, 30), shafts: all(0, -1) });
    const shaft = works(view)!;
    expect(shaft.works).toHaveLength(1);
    expect(shaft.works![0]).toMatch(/^remake external L2 P\d 20 -$/);
    expect(works(view, 'internal')!.works![0]).toMatch(/^remake internal L2 P\d (9|10) -$/);
  });

  it('works on no pair that is kept together and no piece that is left out', () => {
    const sizes = { bores: all(10, 20), shafts: all(9, 11) };
    const locked = smallJob({ ...sizes, pairs: [{ bore: 0, shaft: 0, state: 'locked' }] });
    expect(works(locked)).toBeNull();
    // P2 is still to be made to L1, which is no bore for P1 then.
    const toMake = smallJob({
      bores: all(10, 40),
      shafts: all(0, 10),
      pairs: [{ bore: 0, shaft: 1, state: 'locked' }],
    });
    expect(works(toMake)).toEqual({ most: 0, of: 1, works: ['remake external L2 P1 30 -'] });
    const out = smallJob({ ...sizes, fit: { leftOutPieceIds: [idOf('L1')] } });
    expect(works(out)).toBeNull();
  });

  it('has no work for a shaft that a bore is to be made to', () => {
    // P2 at -5 suits neither L1 (10) nor L3 (20): L2 is to be bored to it, to 5.
    const view = smallJob({ bores: [six(10), [], six(20)], shafts: all(0, -5) });
    const fit = view.fits[0]!;
    expect(fit.toBore.map(({ pieceId, partnerId }) => [pieceId, partnerId])).toEqual([
      [idOf('L2'), idOf('P2')],
    ]);
    expect(pairsShort(fit)).toEqual({ most: 1, of: 1 });
    expect(works(view)).toBeNull();
  });

  it('says so when pairs kept apart leave no complete pairing at any size', () => {
    const pairs = [0, 1].map((shaft) => ({ bore: 0, shaft, state: 'left out' as const }));
    const view = smallJob({ bores: all(10, 10), shafts: all(0, 0), pairs });
    expect(works(view)).toEqual({ most: 1, of: 2, works: undefined });
    expect(pairRework(view.fits[0]!, 'external')!.works).toBeNull();
  });
});

describe('pairMoves', () => {
  const before = smallJob({ bores: all(10, 20), shafts: all(0, 10) });
  const moves = (view: JobView, from = before) => {
    const mark = markOf(view);
    return pairMoves(partnersOf(from.fits[0]!), view.fits[0]!).map((move) => [
      mark(move.externalPieceId),
      mark(move.from.internalPieceId),
      move.from.clearance === null ? null : move.from.clearance.clearancePm / um,
      mark(move.from.goneTo),
      mark(move.to?.internalPieceId ?? null),
    ]);
  };

  it('are none while everybody keeps their partner, or only gets a first one', () => {
    expect(moves(before)).toEqual([]);
    const third = smallJob({ bores: all(10, 20, 30), shafts: all(0, 10, 20) });
    expect(moves(third)).toEqual([]);
  });

  it('say what a piece had with its old partner, who has that now, and where it went', () => {
    const turned = smallJob({ bores: all(20, 10), shafts: all(0, 10) });
    expect(moves(turned)).toEqual([
      ['P1', 'L1', 20, 'P2', 'L2'],
      ['P2', 'L2', 0, 'P1', 'L1'],
    ]);
  });

  it('tell of a piece that lost its partner and found no other', () => {
    const alone = smallJob({ bores: all(10, 40), shafts: all(0, 10) });
    expect(moves(alone)).toEqual([['P2', 'L2', 30, null, null]]);
  });

  it('are none of a piece kept for a partner it is still to be made to, which has that partner now', () => {
    const kept = smallJob({
      bores: all(10, 20),
      shafts: all(0, 10),
      pairs: [{ bore: 0, shaft: 1, state: 'locked' }],
    });
    expect(kept.fits[0]!.lockedToMake.size).toBe(2);
    expect(moves(kept)).toEqual([['P1', 'L1', 10, 'P2', null]]);
  });
});

describe('pairRow', () => {
  const row = (id: string, state: Pair['state'], over: Partial<Pair> = {}) =>
    ({
      ...smallJob({ pairs: [{ bore: 0, shaft: 0, state }] }).sheet.pairs[0]!,
      id,
      ...over,
    }) satisfies Pair;
  const found = (...pairs: Pair[]) => pairRow(pairs, pairs[0]!.fitId, idOf('L1'), idOf('P1'))?.id;

  it('is the row that holds, else one undone that was never final', () => {
    expect(found(row('a', 'undone'), row('b', 'left out'))).toBe('b');
    expect(found(row('a', 'undone'))).toBe('a');
    expect(found(row('a', 'locked', { struckAt: '2026-03-14T11:00:00Z' }))).toBeUndefined();
  });

  it('is never the record of a final pair that was undone', () => {
    const record = row('a', 'undone', { clearancePm: 10 * um });
    expect(isRecord(record)).toBe(true);
    expect(isRecord(row('b', 'final', { clearancePm: 10 * um }))).toBe(false);
    expect(found(record)).toBeUndefined();
    expect(found(record, row('b', 'undone'))).toBe('b');
  });
});

describe('pairMarkTaken', () => {
  it('is the other final pair that carries the mark, whatever its letters and spaces', () => {
    const pairs = [0, 1].map((at) => ({
      bore: at, shaft: at, state: 'final' as const, mark: at === 0 ? 'A1' : 'B1',
    })); // prettier-ignore
    const fit = smallJob({ bores: all(10, 20), shafts: all(0, 10), pairs }).fits[0]!;
    const [first, second] = fit.pairs;
    expect(pairMarkTaken(fit, second!, ' a1 ')).toBe(first);
    expect(pairMarkTaken(fit, first!, 'A1')).toBeNull();
    expect(pairMarkTaken(fit, second!, 'C1')).toBeNull();
    expect(pairMarkTaken(fit, second!, ' ')).toBeNull();
    const chosen = smallJob({ bores: all(10), shafts: all(0) }).fits[0]!;
    expect(pairMarkTaken(chosen, second!, '')).toBeNull();
  });
});
