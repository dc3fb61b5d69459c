import { describe, expect, it } from 'vitest';
import { draftJob, likelyPrefix, type DraftJob, type Places } from '@/lib/rules/draft-job';
import { readDrawn } from '@/lib/rules/drawn-feature';
import { nothingSaid, type FitSaid } from '@/lib/rules/ways/read-wanted';
import { JobStart } from '@/lib/schema/new-job';

const um = 1_000_000;
const mm = { decimal: '.', unit: 'mm' } as const;

let count = 0;
const newId = () => {
  count += 1;
  return `0195920c-0000-7000-8000-${count.toString(16).padStart(12, '0')}`;
};

const feature = (drawn: string, over = {}) => ({
  key: drawn,
  drawn,
  kind: null,
  name: '',
  places: null,
  ...over,
});

const draft: DraftJob = {
  name: 'Pump',
  drawing: 'P-1',
  revision: '',
  unit: 'mm',
  parts: [
    {
      key: 'a',
      name: 'Barrel',
      quantity: '4',
      material: 'bronze',
      prefix: '',
      features: [feature('18 H7'), feature('')],
    },
    {
      key: 'b',
      name: 'Ram',
      quantity: '4',
      material: '',
      prefix: '',
      features: [feature('Ø18')],
    },
  ],
  fit: { ...nothingSaid(), limits: { min: '0.008', max: '0.012', aim: '' } },
};

describe('draftJob', () => {
  it('makes of a draft what the API takes', () => {
    const made = draftJob(draft, '.', newId);
    expect(made.kind).toBe('job');
    if (made.kind !== 'job') return;
    expect(JobStart.safeParse(made.start).error?.issues ?? []).toEqual([]);
    expect(made.start.parts.map(({ prefix, quantity }) => [prefix, quantity])).toEqual([
      ['B', 4],
      ['R', 4],
    ]);
    expect(made.start.features.map(({ kind, balloon, name }) => [kind, balloon, name])).toEqual([
      ['bore', '1', 'Bore'],
      ['outside', '2', 'Outside'],
    ]);
    expect(made.start.fits[0]).toMatchObject({
      name: 'Ram in barrel',
      minPm: 8 * um,
      maxPm: 12 * um,
      aimPm: 10 * um,
    });
  });

  it('takes two parts with names as long as a name may be', () => {
    const parts = draft.parts.map((part) => ({
      ...part,
      name: part.name.repeat(30).slice(0, 120),
    }));
    const made = draftJob({ ...draft, parts }, '.', newId);
    if (made.kind !== 'job') throw new Error('no job');
    expect(JobStart.safeParse(made.start).error?.issues ?? []).toEqual([]);
  });

  it('reads a bore at three stations from the top, two ways across', () => {
    const made = draftJob(draft, '.', newId);
    if (made.kind !== 'job') throw new Error('no job');
    expect(made.start.features[0]).toMatchObject({
      stations: ['top', 'middle', 'bottom'],
      directions: ['A', 'B'],
    });
  });

  it('reads a length at one place unless more are said', () => {
    const plansOf = (places: Places | null) => {
      const features = [feature('52 ±0.05', { places })];
      const made = draftJob(
        { ...draft, parts: [{ ...draft.parts[0]!, features }], fit: null },
        '.',
        newId,
      );
      if (made.kind !== 'job') throw new Error('no job');
      const { stations, directions } = made.start.features[0]!;
      return [stations, directions];
    };
    expect(plansOf(null)).toEqual([['middle'], ['A']]);
    expect(plansOf('across')).toEqual([['middle'], ['A', 'B']]);
  });

  it.each([
    ['no name', { ...draft, name: ' ' }, { at: 'name' }],
    [
      'no parts',
      { ...draft, parts: [{ ...draft.parts[0]!, name: '', features: [feature('')] }] },
      { at: 'parts' },
    ],
    [
      'half a piece',
      { ...draft, parts: [{ ...draft.parts[0]!, quantity: '2.5' }] },
      { at: 'quantity', part: 'a' },
    ],
    [
      'a nameless part with a size',
      { ...draft, parts: [{ ...draft.parts[0]!, name: '' }] },
      { at: 'part name', part: 'a' },
    ],
    [
      'a size that is no size',
      { ...draft, parts: [{ ...draft.parts[0]!, features: [feature('18..2')] }] },
      { at: 'drawn', feature: '18..2' },
    ],
    [
      'the most below the least',
      { ...draft, fit: { ...draft.fit!, limits: { min: '0.008', max: '0.004', aim: '' } } },
      { at: 'fit', wrong: { field: 'max', problem: 'order' } },
    ],
  ])('names what has to be put right: %s', (_, broken, fault) => {
    expect(draftJob(broken, '.', newId)).toMatchObject({ kind: 'fault', fault });
  });

  it('works classes and rules out at the nominal of the bore', () => {
    const of = (over: Partial<FitSaid>) => {
      const made = draftJob({ ...draft, fit: { ...nothingSaid(), ...over } }, '.', newId);
      return made.kind === 'job' ? made.start.fits[0] : made;
    };
    // 18: H7 +18/0, g6 -6/-17 (ISO 286-2).
    expect(of({ way: 'classes', classes: 'H7 g6' })).toMatchObject({
      way: 'classes', classes: 'H7/g6', minPm: 6 * um, maxPm: 35 * um, atPm: 18_000 * um,
    }); // prettier-ignore
    const rule = { fixed: '', min: '0.5', aim: '1', max: '1.5' };
    expect(of({ way: 'rule', rule, ruleName: 'Ours' })).toMatchObject({
      way: 'rule', ruleName: 'Ours', minPm: 9 * um, aimPm: 18 * um, maxPm: 27 * um,
    }); // prettier-ignore
    expect(of({ way: 'classes', classes: 'H7' })).toMatchObject({ fault: { at: 'fit' } });
  });

  it('makes no fit where no two features go together', () => {
    const made = draftJob({ ...draft, parts: draft.parts.slice(0, 1) }, '.', newId);
    expect(made).toMatchObject({ kind: 'job', start: { fits: [] } });
  });
});

describe('likelyPrefix', () => {
  it('takes a second letter where the first is taken', () => {
    expect(likelyPrefix('Piston', [{ prefix: 'P' }])).toBe('PI');
    expect(likelyPrefix('3 way cock', [])).toBe('W');
    expect(likelyPrefix('', [])).toBe('');
  });
});

describe('readDrawn', () => {
  // ISO 286-2: 18 H7 is +18/0 µm, 25 g6 is -7/-20 µm.
  it('looks up the deviations of a class', () => {
    expect(readDrawn('18 H7', mm)).toMatchObject({
      kind: 'feature',
      upperPm: 18 * um,
      lowerPm: 0,
      likely: 'bore',
    });
    expect(readDrawn('25 g6', mm)).toMatchObject({
      upperPm: -7 * um,
      lowerPm: -20 * um,
      likely: 'outside',
    });
  });

  it('says when a class is not defined at a size', () => {
    expect(readDrawn('0.5 A9', mm)).toEqual({ kind: 'class', isoClass: 'A9' });
  });

  it('takes the forms a drawing gives', () => {
    expect(readDrawn('18.000 +0.018 0', mm)).toMatchObject({ upperPm: 18 * um, lowerPm: 0 });
    expect(readDrawn('Ø22 ±0.05', mm)).toMatchObject({ upperPm: 50 * um, likely: 'outside' });
    expect(readDrawn('1/2 in', mm)).toMatchObject({ nominalPm: 12_700_000_000, unit: 'in' });
  });

  // Hole basis: a fundamental deviation of zero below. Shaft basis: of zero above (ISO 286-1).
  it.each([
    ['18.000 +0.018 0', 'bore'],
    ['.5000 in +.0007 0', 'bore'],
    ['Ø18 +0.018 0', 'bore'],
    ['12.000 0 -0.027', 'outside'],
    ['12 ±0.1', 'length'],
    ['12 +0.03 +0.01', 'length'],
    ['12 -0.01 -0.03', 'length'],
    ['52', 'length'],
    ['12.000 / 11.973', 'length'],
    ['Ø22', 'outside'],
  ])('takes %s as most likely a %s', (drawn, likely) => {
    expect(readDrawn(drawn, mm)).toMatchObject({ kind: 'feature', likely });
  });
});
