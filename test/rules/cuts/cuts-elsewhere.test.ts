import { describe, expect, it } from 'vitest';
import { cutView, type CutSaid } from '@/lib/rules/cuts/cut-view';
import { jobView } from '@/lib/rules/job-view';
import type { Piece } from '@/lib/schema/part';
import { um } from '../make';
import { aDay, cutTo, type Done } from './a-day';

// What a cut took follows from FORMULAS section 31: got = before - after (a shaft), ratio = got / asked.
// Each cut asks for 0.100, so the micrometres that came off are its ratio in hundredths.

const said: CutSaid = {
  slide: { dial: 'radius', divisionPm: 10 * um, fineFeed: 1, bitesPm: 0 },
  lapPm: 0,
  changed: null,
  temperatureMilliC: null,
};

/** What the Cut screen of a piece learns from: piece and ratio in hundredths, oldest first. */
function learned(
  done: readonly Done[],
  mark = 'P7',
  more: { said?: Partial<CutSaid>; pieces?: Record<string, Partial<Piece>> } = {},
): string[] {
  const view = aDay(done, more.pieces);
  const at = {
    pieceId: view.sheet.pieces.find((piece) => piece.mark === mark)!.id,
    featureId: view.sheet.features.find(({ balloon }) => balloon === '4')!.id,
  };
  const { learnt } = cutView(view, at, { ...said, ...more.said })!;
  return learnt.steps.map(({ cut, ratio }) => {
    const from = view.sheet.pieces.find(({ id }) => id === cut.pieceId)!.mark;
    return `${from} ${Math.round(ratio! * 100)}`;
  });
}

const p7: Done = ['P7', 'read', 300];
const p5 = cutTo('P5', [90, 91]);
const p6 = cutTo('P6', [93, 94, 95]);
/** The cuts of a list, by their place among them, changed. */
const but = (done: readonly Done[], place: number, more: object, act = 'cut'): Done[] => {
  let count = 0;
  return done.map((one): Done => {
    if (one[1] !== act) return one;
    count += 1;
    return count === place ? ([...one.slice(0, 3), more] as unknown as Done) : one;
  });
};

describe('what the cuts of other pieces teach of the next one', () => {
  it.each<[string, Done[], string[]]>([
    ['the first cut of a piece', [...p6, p7], ['P6 93', 'P6 94', 'P6 95']],
    ['two pieces before it', [...p5, ...p6, p7], ['P5 90', 'P5 91', 'P6 93', 'P6 94', 'P6 95']],
    [
      'its own first, and as the newest',
      [...p5, ...p6, ...cutTo('P7', [97], 300)],
      ['P5 91', 'P6 93', 'P6 94', 'P6 95', 'P7 97'],
    ],
    [
      'its own alone, once they are five',
      [...p6, ...cutTo('P7', [97, 98, 97, 98, 97], 600)],
      ['P7 97', 'P7 98', 'P7 97', 'P7 98', 'P7 97'],
    ],
    [
      'one that was made after its own',
      [...cutTo('P7', [97], 300), ...p6],
      ['P6 93', 'P6 94', 'P6 95', 'P7 97'],
    ],
    ['fewer than two in all', [...cutTo('P6', [93]), p7], []],
    ['one and its own', [...cutTo('P6', [93]), ...cutTo('P7', [97], 300)], ['P6 93', 'P7 97']],
    ['its own one alone', cutTo('P7', [97], 300), ['P7 97']],
    ['a cut not measured yet', [...p6, ['P6', 'cut', 100], p7], ['P6 93', 'P6 94', 'P6 95']],
    ['a cut nobody said the asking of', [...but(p6, 2, { askedPm: 0 }), p7], ['P6 93', 'P6 95']],
    ['a spring pass', [...but(p6, 2, { spring: true, askedPm: 0 }), p7], ['P6 93', 'P6 95']],
    [
      'a cut that was not taken',
      [...but(p6, 3, { struckAt: '2026-03-14T10:00:00Z' }).slice(0, -1), p7],
      ['P6 93', 'P6 94'],
    ],
  ])('is of %s', (_, done, wanted) => {
    expect(learned(done)).toEqual(wanted);
  });

  it.each<[string, Done[], string[]]>([
    ['the tool', but(p6, 2, { changed: 'tool' }), ['P6 94', 'P6 95']],
    ['the insert', but(p6, 2, { changed: 'insert' }), ['P6 94', 'P6 95']],
    ['the speed', but(p6, 2, { changed: 'speed' }), ['P6 94', 'P6 95']],
    ['the overhang', but(p6, 2, { changed: 'overhang' }), ['P6 94', 'P6 95']],
    ['something', but(p6, 2, { changed: 'other' }), ['P6 94', 'P6 95']],
    ['something before the last cut alone', but(p6, 3, { changed: 'tool' }), []],
    [
      'the tool on a piece not measured since',
      [...p6, ['P8', 'read', 400], ['P8', 'cut', 100, { changed: 'tool' }]],
      [],
    ],
    [
      'the tool on another feature turned outside',
      [
        ...p6,
        ['P8:5', 'read', 400],
        ['P8:5', 'cut', 100, { changed: 'tool' }],
        ['P8:5', 'read', 300],
      ],
      [],
    ],
    [
      'the tool in a bore, which is another tool',
      [...p6, ['L8:1', 'cut', 100, { changed: 'tool' }]],
      ['P6 93', 'P6 94', 'P6 95'],
    ],
    ['the tool by its name', but(p6, 3, { tool: 'brazed' }), []],
    ['the slide for the last cut', but(p6, 3, { divisionPm: 20 * um }), []],
    ['the slide for the first cut', but(p6, 1, { divisionPm: 20 * um }), ['P6 94', 'P6 95']],
    ['the dial', but(p6, 1, { dial: 'diameter' }), ['P6 94', 'P6 95']],
    ['the fine feed', but(p6, 1, { fineFeed: 10 }), ['P6 94', 'P6 95']],
    ['no slide, which was not said', but(p6, 1, { dial: null }), ['P6 94', 'P6 95']],
    ['no fine feed, which is none', but(p6, 1, { fineFeed: null }), ['P6 93', 'P6 94', 'P6 95']],
  ])('begins afresh where was changed: %s', (_, done, wanted) => {
    expect(learned([...done, p7])).toEqual(wanted);
  });

  it('is silent for a slide no cut was made with, and after a change that is not noted yet', () => {
    const slide = { ...said.slide!, divisionPm: 20 * um };
    expect(learned([...p6, p7], 'P7', { said: { slide } })).toEqual([]);
    expect(learned([...p6, p7], 'P7', { said: { slide: null } })).toEqual([]);
    expect(learned([...p6, p7], 'P7', { said: { changed: 'tool' } })).toEqual([]);
  });

  it('keeps two machines of one dial apart by their names', () => {
    const on = (tool: string, done: readonly Done[]) =>
      done.map((one): Done => (one[1] === 'cut' ? [one[0], 'cut', one[2], { tool }] : one));
    const day = [...on('A', p5), ...on('B', p6), p7];
    const next = (tool: string) =>
      learned(day, 'P7', { said: { slide: { ...said.slide!, tool } } });
    expect(next('B')).toEqual(['P6 93', 'P6 94', 'P6 95']);
    expect(next('A')).toEqual(['P5 90', 'P5 91']);
    // Without a name it may be either.
    expect(learned(day)).toEqual([]);
    const insert = but(day, 4, { tool: 'B', changed: 'insert' });
    const both = (tool: string) =>
      learned(insert, 'P7', { said: { slide: { ...said.slide!, tool } } });
    expect([both('A').length, both('B')]).toEqual([2, ['P6 94', 'P6 95']]);
    // A cut that says nothing is passed over.
    const silent = [...but(on('B', p6), 2, { dial: null }), p7];
    const slideB = { ...said.slide!, tool: 'B' };
    expect(learned(silent, 'P7', { said: { slide: slideB } })).toEqual(['P6 93', 'P6 95']);
    // What was changed on the one says nothing of what the other took before.
    const own = [
      ...on('A', cutTo('P7', [97, 98], 400)),
      ...but(on('B', p6), 3, { tool: 'B', changed: 'tool' }),
    ];
    const slide = { ...said.slide!, tool: 'A' };
    expect(learned(own, 'P7', { said: { slide } })).toEqual(['P7 97', 'P7 98']);
  });

  it('is nothing of its own cuts either that were made before a change noted on another piece', () => {
    const day: Done[] = [
      ...cutTo('P7', [97, 97], 400),
      ['P8', 'read', 400],
      ['P8', 'cut', 100, { changed: 'insert' }],
      ['P8', 'read', 305],
    ];
    expect(learned(day)).toEqual([]);
    const after: Done[] = [...day, ['P7', 'cut', 100], ['P7', 'read', 108]];
    expect(learned(after)).toEqual(['P8 95', 'P7 98']);
    const view = aDay(after);
    const at = view.sheet.cuts.find(({ pieceId }) => markOf(pieceId) === 'P7')!;
    expect(cutView(view, at, said)!.changedElsewhere).toMatchObject({
      changed: 'insert',
      before: 2,
    });
    function markOf(id: string) {
      return view.sheet.pieces.find((piece) => piece.id === id)!.mark;
    }
  });

  it('leaves out what was measured warm, before the cut or after it', () => {
    // 18.4 of iron at 60 degrees C reads 0.008 large; the band is 0.008.
    const hot = { temperatureMilliC: 60_000 };
    expect(learned([...but(cutTo('P6', [93, 94, 95, 96]), 2, hot), p7])).toEqual([
      'P6 95',
      'P6 96',
    ]);
    expect(learned([...but(p6, 2, { temperatureMilliC: 20_500 }), p7])).toHaveLength(3);
  });

  it('leaves out struck pieces and what was cut of a sleeve, and keeps a scrapped piece', () => {
    const struck = { P6: { struckAt: '2026-03-14T12:00:00Z' } };
    expect(learned([...p6, p7], 'P7', { pieces: struck })).toEqual([]);
    const scrapped = { P6: { fate: 'scrapped' as const } };
    expect(learned([...p6, p7], 'P7', { pieces: scrapped })).toHaveLength(3);
    const sleeve = but(cutTo('P6', [93, 94, -400, 95, 96]), 3, { changed: 'sleeve', askedPm: 0 });
    expect(learned([...sleeve, p7])).toEqual(['P6 93', 'P6 94']);
    const own = but(cutTo('P7', [97, -400, 60], 400), 2, { changed: 'sleeve', askedPm: 0 });
    expect(learned([...p6, ...own])).toEqual(['P7 60']);
  });

  it('follows readings that are taken back', () => {
    const day: Done[] = [...p6, ['P6', 'strike'], p7];
    expect(learned(day)).toEqual(['P6 93', 'P6 94']);
    // Measured again, it says so too.
    expect(learned([...day, ['P6', 'read', 117]])).toEqual(['P6 93', 'P6 94', 'P6 96']);
  });

  it('foretells the first cut of the piece, and how much is left is of the piece itself', () => {
    const view = aDay([...p6, p7]);
    const piece = view.sheet.pieces.find(({ mark }) => mark === 'P7')!;
    const feature = view.sheet.features.find(({ balloon }) => balloon === '4')!;
    const cut = cutView(view, { pieceId: piece.id, featureId: feature.id }, said)!;
    // Left 0.300; by the mean ratio 0.94 that is 0.319 to ask, more than half as deep again as any cut before.
    expect(cut.advice).toMatchObject({ kind: 'cut', how: 'as before', divisions: 5 });
    expect(cut.expected!.valuePm).toBe(cut.aim.now!.valuePm - 94 * um);
    const near = aDay([...p6, ['P7', 'read', 80]]);
    const last = cutView(near, { pieceId: piece.id, featureId: feature.id }, said)!;
    // Left 0.080 to 18.000: 0.080 / 0.94 = 0.0851 on diameter; to the stop, 17.9988, with care: four divisions.
    expect(last.advice).toMatchObject({ kind: 'cut', how: 'last', divisions: 4 });
  });
});

describe('the order of cuts on several pieces', () => {
  it('is that of their ordinals on one piece, whatever order the book lists them in', () => {
    const view = aDay([...cutTo('P6', [93, 94, 95, 96], 500), p7]);
    const back = jobView({ ...view.sheet, cuts: view.sheet.cuts.toReversed() });
    const piece = view.sheet.pieces.find(({ mark }) => mark === 'P7')!;
    const feature = view.sheet.features.find(({ balloon }) => balloon === '4')!;
    const { learnt } = cutView(back, { pieceId: piece.id, featureId: feature.id }, said)!;
    expect(learnt.steps.map(({ ratio }) => Math.round(ratio! * 100))).toEqual([93, 94, 95, 96]);
  });

  it('is that of the readings after them, where all pieces were measured before any was cut', () => {
    const day: Done[] = [
      ['P7', 'read', 300],
      ['P6', 'read', 400],
      ['P8', 'read', 400],
      ['P8', 'cut', 100],
      ['P8', 'read', 310],
      ['P8', 'cut', 100],
      ['P8', 'read', 220],
      // P6 was read before those of P8, and cut after them with another insert.
      ['P6', 'cut', 100, { changed: 'insert' }],
      ['P6', 'read', 305],
      ['P6', 'cut', 100],
      ['P6', 'read', 210],
    ];
    expect(learned(day)).toEqual(['P6 95', 'P6 95']);
  });

  it('is that of the running numbers of its device for a cut that was never measured', () => {
    const spoilt = (deviceId: string | null): Done[] => [
      ['P8', 'read', 400],
      ['P8', 'cut', 100, { changed: 'tool', deviceId }],
      ...cutTo('P6', [93, 94]).map((one): Done =>
        one[1] === 'cut' ? [one[0], 'cut', one[2], { deviceId: 'here' }] : one,
      ),
      p7,
    ];
    expect(learned(spoilt('here'))).toEqual(['P6 93', 'P6 94']);
    // Nothing says when another device made it: it may have been since.
    expect(learned(spoilt('there'))).toEqual([]);
    expect(learned(spoilt(null))).toEqual([]);
  });

  it('is not that of the clocks of the devices', () => {
    const late = but(but(p6, 1, { deviceTime: '2027-01-01T00:00:00Z', changed: 'tool' }), 3, {
      deviceTime: '2001-01-01T00:00:00Z',
      createdAt: '2001-01-01T00:00:00Z',
    });
    expect(learned([...p5, ...late, p7])).toEqual(['P6 93', 'P6 94', 'P6 95']);
  });
});
