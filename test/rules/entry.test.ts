import { describe, expect, it } from 'vitest';
import type { Cell } from '@/lib/rules/cells';
import { entryAlong } from '@/lib/rules/entry-along';
import { isGaugeTab, noBurst, withCharacter } from '@/lib/rules/entry-burst';
import { looksCut } from '@/lib/rules/entry-cut';
import { entryForm } from '@/lib/rules/entry-form';
import { entryGauge } from '@/lib/rules/entry-gauge';
import { entryKey, type KeyPress, type KeyState } from '@/lib/rules/entry-key';
import { entryMeaning } from '@/lib/rules/entry-meaning';
import { entryNext } from '@/lib/rules/entry-next';
import { entryOrder } from '@/lib/rules/entry-order';
import { isEntryRepeat } from '@/lib/rules/entry-repeat';
import { entryStart } from '@/lib/rules/entry-start';
import { entryStep } from '@/lib/rules/entry-step';
import { jobView } from '@/lib/rules/job-view';
import { standing } from '@/lib/rules/standing';
import type { Gauge } from '@/lib/schema/gauge';
import { exampleSheet } from './example-sheet';
import { correctionOf, mm, readingOf, um } from './make';

describe('entryMeaning', () => {
  const setting = { decimal: '.', unit: 'mm', nominalPm: 18 * mm, kind: 'outside' } as const;
  const of = (text: string) => entryMeaning(text, setting);

  it('finds nothing wrong with the beginning of a length', () => {
    for (const text of ['-', '+', '.', '-.', '1/', '1 1/', ' \u2212 ']) {
      expect(of(text)).toMatchObject({ kind: 'begun' });
    }
    expect(of('')).toEqual({ kind: 'empty' });
    expect(of('   ')).toEqual({ kind: 'empty' });
  });

  it('knows a sign alone, which no reading is', () => {
    expect(of('-')).toEqual({ kind: 'begun', aloneSign: true });
    expect(of('-.')).toEqual({ kind: 'begun', aloneSign: false });
  });

  it('reads a departure from the nominal', () => {
    expect(of('+.016')).toMatchObject({ kind: 'length', meaning: { sizePm: 18_016 * um } });
  });

  it('passes over the control characters of a gauge', () => {
    expect(of('\u000218.016\u0003')).toMatchObject({
      kind: 'length',
      meaning: { sizePm: 18_016 * um },
    });
  });

  it('asks instead of guessing', () => {
    expect(of('1,250')).toMatchObject({ kind: 'question', code: 'mark-thousands' });
    expect(of('1/2')).toMatchObject({ kind: 'question', code: 'fraction-unit' });
    expect(of('1,234.5')).toMatchObject({ kind: 'length' });
    expect(of('1.234,5')).toMatchObject({ kind: 'question', meanings: [{ sizePm: 1234.5 * mm }] });
  });

  it('names the character that spoils it', () => {
    expect(of('18..2')).toMatchObject({ kind: 'error', code: 'two-marks', at: 2, character: '.' });
  });

  it('takes nothing or less for no size, but for a departure of form', () => {
    expect(of('0')).toMatchObject({ kind: 'error', code: 'not-above-zero' });
    expect(entryMeaning('0', { ...setting, kind: 'roundness' })).toMatchObject({ kind: 'length' });
  });

  it('drops the meaning that is no size: a printed sign that would go below nothing', () => {
    // 20 less than 18, or the size 20 with a sign: only the second can be.
    expect(of('+20')).toMatchObject({ kind: 'question' });
    expect(of('-20')).toMatchObject({ kind: 'error', code: 'not-above-zero' });
  });
});

const bore = { stations: ['top', 'middle', 'bottom'], directions: ['A', 'B'] };
const read = (
  station: string,
  direction: string,
  state: 'counted' | 'held' | 'struck' = 'counted',
) => ({
  station,
  direction,
  state,
});

describe('entryNext', () => {
  it('begins at the first station and goes across before it goes along', () => {
    expect(entryNext(bore, [])).toEqual({
      taken: 0,
      held: 0,
      of: 6,
      next: { station: 'top', direction: 'A' },
    });
    expect(entryNext(bore, [read('top', 'A')]).next).toEqual({ station: 'top', direction: 'B' });
    expect(entryNext(bore, [read('top', 'A'), read('top', 'B')]).next).toEqual({
      station: 'middle',
      direction: 'A',
    });
  });

  it('goes on after the place read last, and comes back for what was passed over', () => {
    expect(entryNext(bore, [read('middle', 'B')]).next).toEqual({
      station: 'bottom',
      direction: 'A',
    });
    const all = [read('middle', 'B'), read('bottom', 'A'), read('bottom', 'B')];
    expect(entryNext(bore, all).next).toEqual({ station: 'top', direction: 'A' });
  });

  it('leaves a struck place free and goes back to it', () => {
    expect(entryNext(bore, [read('top', 'A'), read('top', 'B', 'struck')])).toMatchObject({
      taken: 1,
      next: { station: 'top', direction: 'B' },
    });
  });

  it('does not count a held reading, and does not take its place for free', () => {
    expect(entryNext(bore, [read('top', 'A', 'held')])).toMatchObject({
      taken: 0,
      held: 1,
      next: { station: 'top', direction: 'B' },
    });
  });

  it('takes a place with a reading that counts as taken, whatever else is held there', () => {
    const both = [read('top', 'A', 'held'), read('top', 'A')];
    expect(entryNext(bore, both)).toMatchObject({ taken: 1, held: 0 });
    expect(entryNext(bore, both.toReversed())).toMatchObject({ taken: 1, held: 0 });
  });

  it('has no next when every place has a reading, however many', () => {
    const once = { stations: ['middle'], directions: ['A'] };
    expect(entryNext(once, [read('middle', 'A'), read('middle', 'A')])).toEqual({
      taken: 1,
      held: 0,
      of: 1,
      next: null,
    });
  });
});

describe('entryStep', () => {
  const middleA = { station: 'middle', direction: 'A' };

  it('moves along, across and on', () => {
    const at = (along: 'stations' | 'directions' | 'plan', by: 1 | -1) =>
      entryStep(bore, middleA, { along, by });
    expect(at('stations', 1)).toEqual({ station: 'bottom', direction: 'A' });
    expect(at('stations', -1)).toEqual({ station: 'top', direction: 'A' });
    expect(at('directions', 1)).toEqual({ station: 'middle', direction: 'B' });
    expect(at('directions', -1)).toBeNull();
    expect(at('plan', 1)).toEqual({ station: 'middle', direction: 'B' });
    expect(at('plan', -1)).toEqual({ station: 'top', direction: 'B' });
  });

  it('ends where the map ends', () => {
    const last = { station: 'bottom', direction: 'B' };
    expect(entryStep(bore, last, { along: 'plan', by: 1 })).toBeNull();
    expect(entryStep(bore, last, { along: 'stations', by: 1 })).toBeNull();
  });

  it('enters a map on which every place is taken from its ends', () => {
    expect(entryStep(bore, null, { along: 'stations', by: 1 })).toEqual({
      station: 'top',
      direction: 'A',
    });
    expect(entryStep(bore, null, { along: 'plan', by: -1 })).toEqual({
      station: 'bottom',
      direction: 'B',
    });
  });
});

const view = jobView(exampleSheet());
const pieceOf = (mark: string) => view.sheet.pieces.find((piece) => piece.mark === mark)!.id;
const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)!.mark;
const featureOf = (balloon: string) =>
  view.sheet.features.find((feature) => feature.balloon === balloon)!.id;
const namesOf = (cell: { pieceId: string; featureId: string } | null) =>
  cell === null
    ? null
    : [markOf(cell.pieceId), view.sheet.features.find((f) => f.id === cell.featureId)!.balloon];

describe('entryOrder', () => {
  const P5 = { pieceId: pieceOf('P5'), featureId: featureOf('4') };

  it('takes all of a piece, then the next piece', () => {
    expect(namesOf(entryOrder(view.parts, 'all of a piece', P5, 1))).toEqual(['P5', '5']);
    const seat = { pieceId: pieceOf('P5'), featureId: featureOf('6') };
    expect(namesOf(entryOrder(view.parts, 'all of a piece', seat, 1))).toEqual(['P6', '4']);
    expect(namesOf(entryOrder(view.parts, 'all of a piece', P5, -1))).toEqual(['P4', '6']);
  });

  it('takes one feature on every piece, then the next feature, then the next part', () => {
    const every = 'this feature on every piece';
    expect(namesOf(entryOrder(view.parts, every, P5, 1))).toEqual(['P6', '4']);
    const P8 = { pieceId: pieceOf('P8'), featureId: featureOf('4') };
    expect(namesOf(entryOrder(view.parts, every, P8, 1))).toEqual(['P1', '5']);
    const lastSeat = { pieceId: pieceOf('P8'), featureId: featureOf('6') };
    expect(namesOf(entryOrder(view.parts, every, lastSeat, 1))).toEqual(['D1', '7']);
  });

  it('steps over what it is told to pass, and ends at the ends of the job', () => {
    const pass = ({ featureId }: { featureId: string }) => featureId !== featureOf('4');
    expect(namesOf(entryOrder(view.parts, 'all of a piece', P5, 1, pass))).toEqual(['P6', '4']);
    const W1 = { pieceId: pieceOf('W1'), featureId: featureOf('9') };
    expect(namesOf(entryOrder(view.parts, 'all of a piece', W1, -1, pass))).toEqual(['P8', '4']);
    const L1 = { pieceId: pieceOf('L1'), featureId: featureOf('1') };
    expect(entryOrder(view.parts, 'all of a piece', L1, -1)).toBeNull();
    expect(
      entryOrder(view.parts, 'all of a piece', { pieceId: 'x', featureId: 'y' }, 1),
    ).toBeNull();
  });
});

describe('entryStart', () => {
  const nothing = { asked: { pieceId: null, featureId: null }, stopped: null };

  it('opens where the address says', () => {
    const asked = { pieceId: pieceOf('P5'), featureId: featureOf('4') };
    expect(namesOf(entryStart(view, { asked, stopped: null }))).toEqual(['P5', '4']);
  });

  it('keeps the feature it stopped at when only a piece is asked for', () => {
    const stopped = { pieceId: pieceOf('P5'), featureId: featureOf('5') };
    const asked = { pieceId: pieceOf('P6'), featureId: null };
    expect(namesOf(entryStart(view, { asked, stopped }))).toEqual(['P6', '5']);
    expect(namesOf(entryStart(view, { asked, stopped: null }))).toEqual(['P6', '6']); // nothing read of the seat
  });

  it('takes the first piece with something to read when only a feature is asked for', () => {
    const asked = { pieceId: null, featureId: featureOf('4') };
    expect(namesOf(entryStart(view, { asked, stopped: null }))).toEqual(['P8', '4']);
  });

  it('goes back to where the person stopped, if that still exists', () => {
    const stopped = { pieceId: pieceOf('W3'), featureId: featureOf('9') };
    expect(namesOf(entryStart(view, { ...nothing, stopped }))).toEqual(['W3', '9']);
    const gone = { pieceId: 'gone', featureId: featureOf('9') };
    expect(namesOf(entryStart(view, { ...nothing, stopped: gone }))).toEqual(['P7', '4']);
  });

  it('else opens at the next step of the job: P7, the piece on the lathe', () => {
    expect(namesOf(entryStart(view, nothing))).toEqual(['P7', '4']);
    expect(
      namesOf(
        entryStart(
          { ...view, next: { kind: 'measure', pieceId: pieceOf('B3'), featureId: featureOf('8') } },
          nothing,
        ),
      ),
    ).toEqual(['B3', '8']);
  });

  it('is nowhere in a job without features', () => {
    expect(entryStart({ ...view, parts: [], next: null }, nothing)).toBeNull();
  });
});

describe('isEntryRepeat', () => {
  const before = { text: '18.016', gaugeId: 'mic', atMs: 1000 };

  it('is the same text with the same gauge within 400 ms', () => {
    expect(isEntryRepeat(before, { ...before, atMs: 1399 })).toBe(true);
    expect(isEntryRepeat(before, { ...before, atMs: 1400 })).toBe(false);
    expect(isEntryRepeat(before, { ...before, atMs: 1100, text: '18.017' })).toBe(false);
    expect(isEntryRepeat(before, { ...before, atMs: 1100, gaugeId: 'caliper' })).toBe(false);
    expect(isEntryRepeat(null, before)).toBe(false);
  });
});

describe('isGaugeTab', () => {
  const typed = (gapMs: number, count = 6) => {
    let burst = noBurst;
    for (let n = 0; n < count; n += 1) burst = withCharacter(burst, 1000 + n * gapMs);
    return burst;
  };

  it('takes the Tab of a gauge at 5, 20 and 100 ms a key', () => {
    for (const gapMs of [5, 20, 100]) {
      expect(isGaugeTab(typed(gapMs), 1000 + 6 * gapMs)).toBe(true);
    }
  });

  it('lets a person out: after a pause, after one figure, or typed by hand', () => {
    expect(isGaugeTab(typed(20), 1000 + 5 * 20 + 201)).toBe(false);
    expect(isGaugeTab(typed(20, 2), 1040)).toBe(false);
    expect(isGaugeTab(typed(240), 1000 + 6 * 240)).toBe(false);
    expect(isGaugeTab(noBurst, 1000)).toBe(false);
    // 200 ms a key is the slowest of gauges, 201 the quickest of hands.
    expect(isGaugeTab(typed(200), 1000 + 6 * 200)).toBe(true);
    expect(isGaugeTab(typed(201), 1000 + 5 * 201 + 200)).toBe(false);
    const lagged = withCharacter(withCharacter(typed(20, 4), 1500), 1520);
    expect(isGaugeTab(lagged, 1540)).toBe(false);
  });
});

describe('entryKey', () => {
  const press = (key: string, over: Partial<KeyPress> = {}): KeyPress => ({
    key,
    ctrl: false,
    alt: false,
    meta: false,
    shift: false,
    repeat: false,
    composing: false,
    ...over,
  });
  const empty: KeyState = { isEmpty: true, answers: 0, shortcuts: true };
  const typing: KeyState = { ...empty, isEmpty: false };

  it('gives figures, signs and marks to the entry', () => {
    for (const key of ['0', '9', '.', ',', '+', '-', '\u2212', '\u00bd']) {
      expect(entryKey(press(key), empty)).toEqual({ kind: 'type', character: key });
    }
  });

  it('lets the letters of the shortcuts act only while nothing is typed', () => {
    expect(entryKey(press('v'), empty)).toEqual({ kind: 'void' });
    expect(entryKey(press('V', { shift: true }), empty)).toEqual({ kind: 'void' });
    expect(entryKey(press('n'), empty)).toEqual({ kind: 'move', along: 'plan', by: 1 });
    expect(entryKey(press('P', { shift: true }), empty)).toEqual({ kind: 'cell', by: -1 });
    expect(entryKey(press('f'), empty)).toEqual({ kind: 'along', what: 'features', by: 1 });
    expect(entryKey(press('W', { shift: true }), empty)).toEqual({
      kind: 'along',
      what: 'pieces',
      by: -1,
    });
    expect(entryKey(press('s'), empty)).toEqual({ kind: 'spring pass' });
    expect(entryKey(press('l'), empty)).toEqual({ kind: 'last digits' });
    expect(entryKey(press('D', { shift: true }), empty)).toEqual({ kind: 'this device' });
    expect(entryKey(press('?', { shift: true }), empty)).toEqual({ kind: 'list keys' });
    for (const key of ['v', 'n', 'p', 's', 'm', 'i', 't', '"', ' ', '/']) {
      expect(entryKey(press(key), typing)).toEqual({ kind: 'type', character: key });
    }
  });

  it('takes the star, which no length has, in the middle of one', () => {
    expect(entryKey(press('*', { shift: true }), typing)).toEqual({ kind: 'last digits' });
    expect(entryKey(press('*'), empty)).toEqual({ kind: 'last digits' });
    expect(entryKey(press('*', { repeat: true }), typing)).toBeNull();
    const off = { ...typing, shortcuts: false };
    expect(entryKey(press('*'), off)).toEqual({ kind: 'type', character: '*' });
  });

  it('takes no letter at all where the shortcuts are switched off', () => {
    expect(entryKey(press('v'), { ...empty, shortcuts: false })).toBeNull();
    expect(entryKey(press('8'), { ...empty, shortcuts: false })).toMatchObject({ kind: 'type' });
  });

  it('takes the Ctrl+A some gauges send first for what follows, never for the page', () => {
    expect(entryKey(press('a', { ctrl: true }), empty)).toEqual({ kind: 'overwrite' });
    expect(entryKey(press('A', { ctrl: true }), empty)).toEqual({ kind: 'overwrite' });
    expect(entryKey(press('a', { meta: true }), empty)).toBeNull();
    expect(entryKey(press('a', { ctrl: true, alt: true }), empty)).not.toEqual({
      kind: 'overwrite',
    });
  });

  it('lets what a gauge writes in front go to the entry, though its letter is a shortcut', () => {
    expect(entryKey(press('N'), { ...empty, prefix: 'N+' })).toEqual({
      kind: 'type',
      character: 'N',
    });
    expect(entryKey(press('n'), { ...empty, prefix: 'N+' })).toMatchObject({ kind: 'move' });
  });

  it('leaves combinations alone, but for AltGr, which types', () => {
    expect(entryKey(press('c', { ctrl: true }), empty)).toBeNull();
    expect(entryKey(press('1', { alt: true }), empty)).toBeNull();
    expect(entryKey(press('v', { meta: true }), empty)).toBeNull();
    expect(entryKey(press('\u00bd', { ctrl: true, alt: true }), empty)).toMatchObject({
      kind: 'type',
    });
  });

  it('answers a question with one figure, and types any other', () => {
    const asked = { ...typing, answers: 2 };
    expect(entryKey(press('1'), asked)).toEqual({ kind: 'answer', index: 0 });
    expect(entryKey(press('2'), asked)).toEqual({ kind: 'answer', index: 1 });
    expect(entryKey(press('3'), asked)).toEqual({ kind: 'type', character: '3' });
    expect(entryKey(press('1', { repeat: true }), asked)).toBeNull();
  });

  it('moves over the map with arrows while nothing is typed, and leaves the caret alone else', () => {
    expect(entryKey(press('ArrowLeft'), empty)).toEqual({
      kind: 'move',
      along: 'stations',
      by: -1,
    });
    expect(entryKey(press('ArrowDown'), empty)).toEqual({
      kind: 'move',
      along: 'directions',
      by: 1,
    });
    expect(entryKey(press('ArrowLeft'), typing)).toBeNull();
  });

  it('logs once however long Enter is held, and leaves a composition alone', () => {
    expect(entryKey(press('Enter'), typing)).toEqual({ kind: 'log' });
    expect(entryKey(press('Enter', { repeat: true }), typing)).toBeNull();
    expect(entryKey(press('Enter', { composing: true }), typing)).toBeNull();
    expect(entryKey(press('Backspace', { repeat: true }), typing)).toEqual({ kind: 'rub out' });
  });

  it('lets Shift and Tab out', () => {
    expect(entryKey(press('Tab'), typing)).toEqual({ kind: 'tab' });
    expect(entryKey(press('Tab', { shift: true }), typing)).toBeNull();
  });
});

describe('entryAlong', () => {
  const at = (mark: string, balloon: string) => ({
    pieceId: view.sheet.pieces.find((piece) => piece.mark === mark)!.id,
    featureId: view.sheet.features.find((f) => f.balloon === balloon)!.id,
  });
  it.each([
    ['features', 1, at('P4', '4'), at('P4', '5')],
    ['features', -1, at('P4', '5'), at('P4', '4')],
    ['pieces', 1, at('P4', '5'), at('P5', '5')],
    ['pieces', -1, at('P4', '5'), at('P3', '5')],
    ['features', -1, at('P4', '4'), null],
    ['pieces', -1, at('P1', '4'), null],
    ['pieces', 1, at('P8', '4'), null],
    ['pieces', 1, { pieceId: 'gone', featureId: at('P1', '4').featureId }, null],
    ['pieces', 1, { ...at('P1', '4'), pieceId: 'gone' }, null],
  ] as const)('goes over the %s by %i', (what, by, from, to) => {
    expect(entryAlong(view.parts, from, what, by)).toEqual(to);
  });
});

describe('entryGauge', () => {
  const feature = (balloon: string) => view.sheet.features.find((f) => f.balloon === balloon)!;
  const names = (balloon: string) =>
    entryGauge(view.sheet.gauges, feature(balloon)).map(({ gauge }) => gauge.name);

  it('offers first what covers the nominal and suits the feature, the finer before the coarser', () => {
    expect(names('4').slice(0, 2)).toEqual(['Mic 2', 'Caliper 1']); // outside 18
    expect(names('1')[0]).toBe('Bore gauge 1'); // bore 18
    expect(names('6')[0]).toBe('Small-hole gauge'); // bore 7
    expect(names('2')[0]).toBe('Caliper 1'); // length 52: the micrometer stops at 25
  });

  it('offers every gauge that is not struck out, and says which cover', () => {
    const gauges: Gauge[] = view.sheet.gauges.map((gauge, index) =>
      index === 0 ? { ...gauge, struckAt: '2026-01-01T00:00:00Z' } : gauge,
    );
    const offers = entryGauge(gauges, feature('2'));
    expect(offers).toHaveLength(3);
    expect(offers.map(({ covers }) => covers)).toEqual([true, false, false]);
  });
});

describe('looksCut', () => {
  const readings = standing(
    [1, 2, 3].map((n) => readingOf(n, { valuePm: 18_086 * um })),
    [],
  );
  const toCut: Pick<Cell, 'readings' | 'verdict'> = {
    readings,
    verdict: { state: 'to cut', side: 'top', beyondPm: 86 * um, limitPm: 18 * mm },
  };

  const noSlip = () => null;
  const looks = (valuePm: number, kind: 'outside' | 'bore' = 'outside', cell = toCut) =>
    looksCut(valuePm, cell, { kind }, um, noSlip);

  it('asks about a shaft that was still to cut and is smaller now', () => {
    expect(looks(18_040 * um)).toBe(true);
    expect(looks(18_082 * um)).toBe(false); // four steps
    expect(looks(18_081 * um)).toBe(true);
    expect(looks(18_586 * um)).toBe(false);
  });

  it('asks about a bore that is larger now', () => {
    expect(looks(18_100 * um, 'bore')).toBe(true);
    expect(looks(18_040 * um, 'bore')).toBe(false);
  });

  it('rather believes a slip of what lies past the limit by more than was left to come off', () => {
    const named = () => ({ insteadPm: 18_086 * um });
    const with86 = (valuePm: number, slip: () => { insteadPm: number | null } | null) =>
      looksCut(valuePm, toCut, { kind: 'outside' }, um, slip);
    // 86 were left over 18.000: down to 17.914 it may have been cut, whatever else it looks like.
    expect(with86(17_914 * um, named)).toBe(true);
    expect(with86(17_913 * um, named)).toBe(false);
    // Cut too far is cut, where nothing explains the figure.
    expect(with86(17_586 * um, noSlip)).toBe(true);
    expect(with86(17_586 * um, () => ({ insteadPm: null }))).toBe(true);
    const smallBore: typeof toCut = {
      readings,
      verdict: { state: 'to cut', side: 'bottom', beyondPm: 14 * um, limitPm: 18_100 * um },
    };
    expect(looksCut(18_114 * um, smallBore, { kind: 'bore' }, um, named)).toBe(true);
    expect(looksCut(18_115 * um, smallBore, { kind: 'bore' }, um, named)).toBe(false);
  });

  it('never asks about a piece that was not to cut', () => {
    const inside: typeof toCut = {
      readings,
      verdict: { state: 'inside', side: null, beyondPm: 0, limitPm: null },
    };
    expect(looks(18_040 * um, 'outside', inside)).toBe(false);
  });
});

describe('entryForm', () => {
  const L8 = view.cell(pieceOf('L8'), featureOf('1'));
  const feature = view.sheet.features.find((f) => f.balloon === '1')!;

  it('says within what a bore is round, from its two directions', () => {
    const form = entryForm(L8, feature)!;
    const worst = Math.max(
      ...feature.stations.map((station) => {
        const across = L8.readings.filter((r) => r.station === station).map((r) => r.valuePm);
        return Math.max(...across) - Math.min(...across);
      }),
    );
    expect(form.roundWithinPm).toBe(worst);
  });

  it('tells a taper that is larger than three standard uncertainties', () => {
    const readings = L8.readings.map((reading) => ({
      ...reading,
      valuePm: 18_016 * um + (reading.station === 'bottom' ? 9 * um : 0),
    }));
    const findings = entryForm({ readings, size: L8.size }, feature)!.findings;
    expect(findings[0]).toMatchObject({ kind: 'taper', wideEnd: 'last', amountPm: 9 * um });
  });

  it('leaves a struck reading out, and says nothing of what is not round', () => {
    const struck = standing(
      [readingOf(1), readingOf(2, { direction: 'B' }), readingOf(3, { valuePm: 19 * mm })],
      [correctionOf(3, { kind: 'void' })],
    );
    const size = { ...L8.size!, gaugeId: 'mic' };
    const map = { kind: 'bore', stations: ['middle'], directions: ['A', 'B'] } as const;
    const asMap = { ...map, stations: [...map.stations], directions: [...map.directions] };
    expect(entryForm({ readings: struck, size }, asMap)?.roundWithinPm).toBe(0);
    expect(entryForm({ readings: struck, size }, { ...asMap, kind: 'length' })).toBeNull();
    expect(entryForm({ readings: struck, size: null }, asMap)).toBeNull();
  });
});
