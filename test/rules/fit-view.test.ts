import { describe, expect, it } from 'vitest';
import { mm, um } from './make';
import { pairsOf, smallJob, type SmallJob } from './small-job';

// Invented sizes; every clearance is the difference of the figures listed. The fit is 0.008 to 0.012 clear.
const six = (microns: number) => [microns, microns, microns, microns, microns, microns];

describe('fitView', () => {
  it('lets the smallest place of a bore and the largest of a shaft govern, unless the mean is to', () => {
    const sizes = { bores: [[11, 11, 11, 11, 8, 11]], shafts: [[0, 0, 0, 1, 0, 0]] };
    const extreme = smallJob({ ...sizes, fit: { governs: 'extreme', minPm: 0 } });
    expect(extreme.fits[0]!.internals[0]!.size).toMatchObject({
      valuePm: 18 * mm + 8 * um,
      place: { station: 'bottom', direction: 'A' },
    });
    expect(extreme.fits[0]!.externals[0]!.size!.valuePm).toBe(18 * mm + um);
    expect(pairsOf(extreme)).toEqual(['L1 P1 7']);
    const mean = smallJob({ ...sizes, fit: { governs: 'mean', minPm: 0 } });
    expect(mean.fits[0]!.internals[0]!.size).toMatchObject({
      valuePm: 18 * mm + 10.5 * um,
      place: null,
    });
  });

  it('never chooses a pair that a person keeps apart', () => {
    const sizes = { bores: [six(10), six(10)], shafts: [six(0), six(-2)] };
    expect(pairsOf(smallJob(sizes))).toHaveLength(2);
    const apart = smallJob({ ...sizes, pairs: [{ bore: 0, shaft: 0, state: 'left out' }] });
    expect(pairsOf(apart)).toEqual(['L1 P2 12', 'L2 P1 10']);
    const both = smallJob({
      bores: [six(10)],
      shafts: [six(0)],
      pairs: [{ bore: 0, shaft: 0, state: 'left out' }],
    });
    expect(pairsOf(both)).toEqual([]);
    // The bore waits for a shaft not made yet; the measured shaft suits nothing.
    const shaft = both.sheet.pieces.find(({ mark }) => mark === 'P1')!;
    expect(both.fits[0]!.withoutPartner).toEqual([shaft.id]);
  });

  it('never makes a piece to a partner it is kept apart from', () => {
    const toMake = (job: SmallJob) => {
      const view = smallJob(job);
      const mark = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)!.mark;
      return view.fits[0]!.toMake.map((t) => `${mark(t.pieceId)} to ${mark(t.partnerId)}`);
    };
    const apart = (bore: number, shaft: number) => ({ bore, shaft, state: 'left out' as const });
    const bores = [six(10), six(11)];
    expect(toMake({ bores })).toEqual(['P1 to L1', 'P2 to L2']);
    expect(toMake({ bores, pairs: [apart(0, 0)] })).toEqual(['P2 to L2', 'P3 to L1']);
    expect(toMake({ bores, pairs: [apart(0, 0), apart(1, 1)] })).toEqual(['P1 to L2', 'P2 to L1']);
    // P3 to P8 may have L2 alone, so P1 leaves it to the first of them and takes nothing kept from it.
    const rest = [2, 3, 4, 5, 6, 7].map((shaft) => apart(0, shaft));
    expect(toMake({ bores, pairs: [apart(0, 0), apart(1, 1), ...rest] })).toEqual([
      'P1 to L2',
      'P2 to L1',
    ]);
    expect(toMake({ bores, pairs: [apart(0, 0), apart(0, 1), apart(1, 1), ...rest] })).toEqual([
      'P1 to L2',
    ]);
    // By order P2 would take L1, and P3 could have nothing: so P2 takes L3.
    const three = { bores: [six(10), six(11), six(12)], shafts: [six(1)] };
    const locked = { bore: 1, shaft: 0, state: 'locked' as const };
    const few = [2, 3, 4, 5, 6, 7].map((shaft) => apart(2, shaft));
    expect(toMake({ ...three, pairs: [locked, ...few] })).toEqual(['P2 to L3', 'P3 to L1']);
  });

  it('does not count a shaft as still to cut for a bore it is kept apart from', () => {
    const at = (pairs: SmallJob['pairs'] = []) =>
      smallJob({ bores: [six(10), six(6)], shafts: [six(0)], pairs }).fits[0]!.externals[0]!;
    expect(at().stillToCut).toBe(false);
    // Of L2 it would be 0.006 clear: too tight, so it is to cut for that one.
    expect(at([{ bore: 0, shaft: 0, state: 'left out' }]).stillToCut).toBe(true);
    const none = [0, 1].map((bore) => ({ bore, shaft: 0, state: 'left out' as const }));
    expect(at(none).stillToCut).toBe(false);
  });

  it('keeps together what a person keeps together, though another pairing were better', () => {
    const locked = smallJob({
      bores: [six(10), six(12)],
      shafts: [six(0), six(2)],
      pairs: [{ bore: 0, shaft: 1, state: 'locked' }],
    });
    expect(pairsOf(locked)).toEqual(['L1 P2 8', 'L2 P1 12']);
    expect(locked.fits[0]!.pairs[0]!.state).toBe('locked');
  });

  it('says a shaft is still to cut only when it is larger than any free bore surely allows', () => {
    // u of a size here is 0.33 µm, so the guard is 0.54 µm: at 7.7 clear of 8 wanted it may be inside.
    const at = (microns: number) => smallJob({ bores: [six(10)], shafts: [six(microns)] }).fits[0]!;
    expect(at(5).externals[0]!.stillToCut).toBe(true);
    expect(at(2).externals[0]!.stillToCut).toBe(false);
    expect(at(2.3).externals[0]!.stillToCut).toBe(false);
    expect(at(3).externals[0]!.stillToCut).toBe(true);
    expect(at(5).toMake[0]).toMatchObject({ nowPm: 18 * mm + 5 * um, leftPm: 5 * um });
    expect(at(-3).externals[0]!.stillToCut).toBe(false);
    // Too small for any bore: the bore is promised to the next shaft instead.
    expect(at(-3).toMake.map(({ nowPm }) => nowPm)).toEqual([null]);
  });

  it('takes the doubt of a piece on the lathe into its working limits, else that of its partner', () => {
    const rough = smallJob({ bores: [six(10)], shafts: [[40, 46, 43, 48, 41, 45]] }).fits[0]!;
    const unread = smallJob({ bores: [six(10)] }).fits[0]!;
    const room = (target: { noLargerPm: number; noSmallerPm: number }) =>
      target.noLargerPm - target.noSmallerPm;
    expect(room(rough.toMake[0]!)).toBeLessThan(room(unread.toMake[0]!));
    expect(unread.toMake[0]).toMatchObject({ provable: true, nowPm: null, leftPm: null });
  });

  it('makes a piece to the free bore of its own number first, then in order', () => {
    const view = smallJob({ bores: [six(1), six(2), six(3)], shafts: [six(-9)] });
    const mark = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)!.mark;
    expect(view.fits[0]!.toMake.map((t) => [mark(t.pieceId), mark(t.partnerId)])).toEqual([
      ['P2', 'L2'],
      ['P3', 'L3'],
    ]);
    expect(pairsOf(view)).toEqual(['L1 P1 10']);
  });
});

describe('nextStep', () => {
  it('goes on with the piece on the lathe before one not begun', () => {
    const view = smallJob({ bores: [six(1), six(2)], shafts: [[], six(30)] });
    const started = view.sheet.pieces.find(({ mark }) => mark === 'P2')!;
    expect(view.next).toMatchObject({ kind: 'make', target: { pieceId: started.id } });
  });

  it('measures the first feature of the board that has no size when nothing is to be made', () => {
    expect(smallJob({}).next).toMatchObject({ kind: 'measure' });
  });
});

describe('progressOf', () => {
  it('does not count a bore as made while metal is left in it', () => {
    const liners = (view: ReturnType<typeof smallJob>) =>
      view.progress.byPart.get(view.parts[0]!.part.id)!.made;
    expect(liners(smallJob({ bores: [six(5)] }))).toBe(1);
    expect(liners(smallJob({ bores: [six(-40)] }))).toBe(0);
  });
});
