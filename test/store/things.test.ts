import { plainRunChoices } from '@/lib/rules/run-choices';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { things } from '@/lib/schema/things';
import { changeThing } from '@/lib/store/change-thing';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { makeThing } from '@/lib/store/make-thing';
import type { New, Row } from '@/lib/store/thing-types';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, newFeature, newFit, newGauge, newJob, who } from './a-job';

type Job = Awaited<ReturnType<typeof aJob>>;
let job: Job;
beforeAll(async () => {
  job = await aJob();
});
afterAll(closeStore);

/** One new thing of each kind that goes with the job. */
function samples() {
  const { jobId } = job;
  const at = '2026-11-25T10:00:00Z';
  return {
    job: newJob(),
    part: { ...part(), jobId },
    piece: { ...piece(), jobId },
    feature: {
      ...newFeature(),
      jobId,
      partId: job.liner.id,
      pictureX: 0.1,
      pictureY: 0.30000000000000004,
    },
    gauge: { ...newGauge(), uncertaintyPm: 1_500_000, checkedOn: '2026-03-01' },
    person: { id: uuidv7(), name: 'Ruth' },
    fit: { ...newFit(job.bore.id, job.outside.id), jobId },
    pair: { ...pair(), jobId },
    cut: { ...cut(), jobId },
    run: {
      id: uuidv7(),
      jobId,
      featureId: job.bore.id,
      dial: 'diameter',
      divisionPm: 25_400_000,
      ...plainRunChoices,
    },
    runEvent: {
      id: uuidv7(), jobId, runId: job.run.id, afterOrdinal: 2, kind: 'insert changed',
      note: 'worn', offsetPm: -5_000_000, offsetDial: 'radius', at,
    }, // prettier-ignore
    departure: {
      id: uuidv7(), jobId, number: 4, partId: job.plunger.id, made: '12 mm bar', drawn: '1/2 in',
      why: 'in the rack', touches: 'bush',
    }, // prettier-ignore
    setting: {
      id: uuidv7(),
      decimal: ',',
      unitShown: 'in',
      theme: 'glare',
      hand: 'left',
      personId: null,
    },
    material: {
      id: uuidv7(), name: 'Colsibro', expansionNanoPerC: 16_700, lowNanoPerC: 16_500,
      highNanoPerC: 17_000, source: 'the mill',
    }, // prettier-ignore
    fitRule: {
      id: uuidv7(), name: 'Ours', fixedPm: -12_700_000, minNmPerMm: -250, aimNmPerMm: 0,
      maxNmPerMm: 250, note: 'pins',
    }, // prettier-ignore
  } satisfies { [Kind in Exclude<keyof typeof things, 'picture'>]: New<Kind> };
}

const part = () => ({
  id: uuidv7(), position: 2, name: 'Rod', material: 'steel', prefix: 'R', quantity: 2,
}); // prettier-ignore
const piece = () => ({ id: uuidv7(), partId: job.liner.id, ordinal: 90, mark: 'L90', note: '' });
const pair = (): Omit<New<'pair'>, 'jobId'> => ({
  id: uuidv7(), fitId: job.fit.id, internalPieceId: job.liners[0]!.id,
  externalPieceId: job.plungers[0]!.id, state: 'locked', mark: 'A', clearancePm: 9_000_000,
  uncertaintyPm: 2_000_000, decidedAt: null, personId: null,
}); // prettier-ignore
const cut = () => ({
  id: uuidv7(), pieceId: job.plungers[0]!.id, featureId: job.outside.id, ordinal: 1, lastReadingId: null, spring: true,
  askedPm: 0, beforePm: 18_100_000_000, afterPm: 18_090_000_000, tool: 'CCMT',
}); // prettier-ignore

const kinds = Object.keys(things).filter((kind) => kind !== 'picture') as (keyof ReturnType<
  typeof samples
>)[];

describe('makeThing', () => {
  it.each(kinds)('makes, shows and keeps once a %s', async (kind) => {
    const fresh = samples()[kind];
    const made = await makeThing(kind, fresh as never, who);
    expect(made).toMatchObject({ state: 'made', row: { ...fresh, version: 1, struckAt: null } });
    const { row } = made as { row: Row<typeof kind> };
    expect(things[kind].Row.parse(row)).toEqual(row);
    expect(await findThings(kind, { id: row.id })).toEqual([row]);
    expect(await makeThing(kind, fresh as never, who)).toEqual({ state: 'known', row });
    const field = 'name' in fresh ? 'name' : 'note' in fresh ? 'note' : null;
    if (field === null) return;
    const other = await makeThing(kind, { ...fresh, [field]: 'another' } as never, who);
    expect(other).toMatchObject({ state: 'refused', code: 'other-content', at: 'id' });
  });

  it('knows again what was sent, though it has been changed since', async () => {
    const fresh = newGauge();
    await makeThing('gauge', fresh, who);
    await changeThing('gauge', fresh.id, { version: 1, name: 'The good one' }, who);
    const again = await makeThing('gauge', fresh, who);
    expect(again).toMatchObject({ state: 'known', row: { name: 'The good one', version: 2 } });
    const other = await makeThing('gauge', { ...fresh, name: 'The good one' }, who);
    expect(other).toMatchObject({ state: 'refused', code: 'other-content' });
  });

  it('numbers jobs one after another, however many start at once', async () => {
    const made = await Promise.all(
      Array.from({ length: 8 }, () => makeThing('job', newJob(), who)),
    );
    const numbers = made
      .map((one) => ('row' in one ? one.row.number : NaN))
      .toSorted((a, b) => a - b);
    expect(numbers).toEqual(Array.from({ length: 8 }, (_, i) => numbers[0]! + i));
  });

  it('makes the pieces of a part with it', async () => {
    const rod = { ...part(), jobId: job.jobId, quantity: 3 };
    await makeThing('part', rod, who);
    const marks = (await findThings('piece', { jobId: job.jobId }))
      .filter(({ partId }) => partId === rod.id)
      .map(({ ordinal, mark }) => [ordinal, mark]);
    expect(marks).toEqual([[1, 'R1'], [2, 'R2'], [3, 'R3']]); // prettier-ignore
  });

  it('refuses what makes no sense beside the rest, and says where', async () => {
    const other = await aJob();
    const all = samples();
    const { jobId } = job;
    const nowhere = uuidv7();
    const refused: [keyof typeof all, object, string][] = [
      ['part', { jobId: nowhere }, 'no-such-job jobId'],
      ['piece', { partId: other.liner.id }, 'no-such-part partId'],
      ['piece', { ordinal: 1 }, 'ordinal-taken ordinal'],
      ['piece', { ordinal: 91, mark: 'L1' }, 'mark-taken mark'],
      ['feature', { partId: nowhere }, 'no-such-part partId'],
      ['feature', { pictureId: nowhere }, 'no-such-picture pictureId'],
      ['feature', { lowerPm: 18_000_001 }, 'limits-crossed lowerPm'],
      ['gauge', { rangeLowPm: 2, rangeHighPm: 1 }, 'limits-crossed rangeLowPm'],
      ['gauge', { sendsEnd: 'comma', sendsMark: ',' }, 'comma-twice sendsMark'],
      ['fit', { internalFeatureId: other.bore.id }, 'no-such-feature internalFeatureId'],
      ['fit', { externalFeatureId: nowhere }, 'no-such-feature externalFeatureId'],
      ['fit', { internalFeatureId: job.outside.id }, 'not-internal internalFeatureId'],
      ['fit', { externalFeatureId: job.bore.id }, 'not-external externalFeatureId'],
      ['fit', { minPm: 15_000_000 }, 'limits-crossed minPm'],
      ['fit', { aimPm: 5_999_999 }, 'aim-outside aimPm'],
      ['fit', { aimPm: 14_000_001 }, 'aim-outside aimPm'],
      ['pair', { fitId: other.fit.id }, 'no-such-fit fitId'],
      ['pair', { internalPieceId: job.plungers[0]!.id }, 'piece-of-another-part internalPieceId'],
      ['pair', { externalPieceId: nowhere }, 'no-such-piece externalPieceId'],
      ['pair', { personId: nowhere }, 'no-such-person personId'],
      ['cut', { pieceId: job.liners[0]!.id }, 'piece-of-another-part pieceId'],
      ['cut', { featureId: nowhere }, 'no-such-feature featureId'],
      ['cut', { ordinal: 1 }, 'ordinal-taken ordinal'],
      ['run', { featureId: other.bore.id }, 'no-such-feature featureId'],
      ['run', { alikeIds: [other.bore.id] }, 'no-such-feature alikeIds'],
      ['run', { alikeIds: [job.bore.id] }, 'no-such-feature alikeIds'],
      ['runEvent', { runId: other.run.id }, 'no-such-run runId'],
      ['departure', { number: 5, partId: other.liner.id }, 'no-such-part partId'],
      ['departure', { number: 4 }, 'number-taken number'],
      ['setting', { personId: nowhere }, 'no-such-person personId'],
    ];
    for (const [kind, change, wanted] of refused) {
      const made = await makeThing(kind, { jobId, ...all[kind], ...change } as never, who);
      expect('code' in made ? `${made.code} ${made.at}` : made.state).toBe(wanted);
    }
  });

  it('takes no text another than it can give back', async () => {
    const name = 'Ø18 “µ” — 測定 🛠 \'"\\;--';
    const made = await makeThing('person', { id: uuidv7(), name }, who);
    const { row } = made as { row: Row<'person'> };
    expect((await findThings('person', { id: row.id }))[0]!.name).toBe(name);
  });
});

describe('changeThing', () => {
  it('changes what is said, leaves the rest and counts the version on', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const changed = await changeThing(
      'gauge',
      gauge.id,
      { version: 1, uncertaintyPm: 2_000_000 },
      who,
    );
    expect(changed).toMatchObject({
      state: 'changed',
      row: { ...gauge, uncertaintyPm: 2_000_000, version: 2 },
    });
    expect(await findThings('gauge', { id: gauge.id })).toEqual([
      (changed as { row: unknown }).row,
    ]);
  });

  it('answers a change from an older version with both texts, and changes nothing', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    await changeThing('gauge', gauge.id, { version: 1, name: 'Hers' }, who);
    const mine = { version: 1, name: 'Mine' };
    const stale = await changeThing('gauge', gauge.id, mine, who);
    expect(stale).toMatchObject({
      state: 'stale',
      yours: mine,
      current: { name: 'Hers', version: 2 },
    });
    expect((await findThings('gauge', { id: gauge.id }))[0]!.name).toBe('Hers');
  });

  it('lets one of two who change at once through, and shows the other both texts', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const names = ['one', 'two', 'three', 'four'];
    const changed = await Promise.all(
      names.map((name) => changeThing('gauge', gauge.id, { version: 1, name }, who)),
    );
    expect(changed.map(({ state }) => state).toSorted()).toEqual([
      'changed',
      'stale',
      'stale',
      'stale',
    ]);
    expect((await findThings('gauge', { id: gauge.id }))[0]!.version).toBe(2);
  });

  it('takes a change sent again as made', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const change = { version: 1, note: 'zero checked' };
    await changeThing('gauge', gauge.id, change, who);
    expect(await changeThing('gauge', gauge.id, change, who)).toMatchObject({
      state: 'known',
      row: { version: 2 },
    });
  });

  it('strikes out and puts back, and never loses the row', async () => {
    const gauge = newGauge();
    await makeThing('gauge', gauge, who);
    const struck = await changeThing('gauge', gauge.id, { version: 1, struck: true }, who);
    expect(struck).toMatchObject({ row: { struckAt: expect.stringContaining('T'), version: 2 } });
    const back = await changeThing('gauge', gauge.id, { version: 2, struck: false }, who);
    expect(back).toMatchObject({ row: { struckAt: null, version: 3 } });
  });

  it('does not know what is not there', async () => {
    expect(await changeThing('gauge', uuidv7(), { version: 1 }, who)).toEqual({ state: 'unknown' });
  });

  it('refuses a change after which the row would make no sense', async () => {
    const { row } = (await makeThing(
      'fit',
      { ...newFit(job.bore.id, job.outside.id), jobId: job.jobId },
      who,
    )) as { row: Row<'fit'> };
    const changed = await changeThing('fit', row.id, { version: 1, minPm: 11_000_000 }, who);
    expect(changed).toMatchObject({ state: 'refused', code: 'aim-outside', at: 'aimPm' });
  });

  it('makes the further pieces when the quantity of a part grows, and strikes none when it shrinks', async () => {
    const { jobId, liner } = await aJob(2);
    const counting = async () =>
      (await findThings('piece', { jobId }))
        .filter(({ partId, struckAt }) => partId === liner.id && struckAt === null)
        .map(({ mark }) => mark);
    await changeThing('part', liner.id, { version: 1, quantity: 4 }, who);
    expect(await counting()).toEqual(['L1', 'L2', 'L3', 'L4']);
    const fewer = await changeThing('part', liner.id, { version: 2, quantity: 3 }, who);
    expect(fewer).toMatchObject({
      says: '1 more piece counts than the quantity says; none was struck out',
    });
    expect(await counting()).toHaveLength(4);
    const [, second] = await findThings('piece', { jobId });
    await changeThing('piece', second!.id, { version: 1, struck: true }, who);
    await changeThing('part', liner.id, { version: 3, quantity: 4 }, who);
    expect(await counting()).toEqual(['L1', 'L3', 'L4', 'L5']);
  });

  it('passes over a mark that a piece was given by hand', async () => {
    const { jobId, liner, liners } = await aJob(2);
    await changeThing('piece', liners[0]!.id, { version: 1, mark: 'L3' }, who);
    await changeThing('part', liner.id, { version: 1, quantity: 4 }, who);
    const pieces = (await findThings('piece', { jobId })).filter(
      ({ partId }) => partId === liner.id,
    );
    expect(pieces.map(({ ordinal, mark }) => [ordinal, mark])).toEqual([
      [1, 'L3'],
      [2, 'L2'],
      [4, 'L4'],
      [5, 'L5'],
    ]);
  });

  it('gives a final pair its two pieces to itself, within its fit, until it is undone', async () => {
    const own = await aJob();
    const fresh = (internal: number, external: number, state: Row<'pair'>['state'] = 'final') => ({
      ...pair(),
      id: uuidv7(),
      jobId: own.jobId,
      fitId: own.fit.id,
      internalPieceId: own.liners[internal]!.id,
      externalPieceId: own.plungers[external]!.id,
      state,
    });
    const first = fresh(0, 0);
    expect((await makeThing('pair', first, who)).state).toBe('made');
    const taken = { state: 'refused', code: 'piece-taken' };
    expect(await makeThing('pair', fresh(0, 1), who)).toMatchObject(taken);
    expect(await makeThing('pair', fresh(1, 0, 'locked'), who)).toMatchObject(taken);
    expect((await makeThing('pair', fresh(0, 1, 'left out'), who)).state).toBe('made');
    expect((await makeThing('pair', { ...fresh(1, 1), mark: 'B' }, who)).state).toBe('made');
    await changeThing('pair', first.id, { version: 1, state: 'undone' }, who);
    expect((await makeThing('pair', fresh(0, 0), who)).state).toBe('made');
    const again = await changeThing('pair', first.id, { version: 2, state: 'final' }, who);
    expect(again).toMatchObject(taken);
  });

  it('never lets two final pairs of a fit carry one mark', async () => {
    const own = await aJob();
    const fresh = (place: number, mark: string, state: Row<'pair'>['state'] = 'final') => ({
      ...pair(),
      id: uuidv7(),
      jobId: own.jobId,
      fitId: own.fit.id,
      internalPieceId: own.liners[place]!.id,
      externalPieceId: own.plungers[place]!.id,
      state,
      mark,
    });
    const [first, second] = [fresh(0, 'A1'), fresh(1, 'A1', 'locked')];
    const taken = { state: 'refused', code: 'pair-mark-taken', at: 'mark' };
    await makeThing('pair', first, who);
    expect(await makeThing('pair', fresh(1, ' a1 '), who)).toMatchObject(taken);
    // What is only locked is not stamped, and no mark at all is nobody's.
    expect((await makeThing('pair', second, who)).state).toBe('made');
    const final = (version: number, mark: string) =>
      changeThing('pair', second.id, { version, state: 'final', mark }, who);
    expect(await final(1, 'A1')).toMatchObject(taken);
    expect(await final(1, 'B1')).toMatchObject({ state: 'changed' });
    expect(await final(2, 'a1')).toMatchObject(taken);
    expect(await final(2, '')).toMatchObject({ state: 'changed' });
    const bare = await changeThing('pair', first.id, { version: 1, mark: '' }, who);
    expect(bare).toMatchObject({ state: 'changed' });
    // Undone or struck out it frees its mark, and does not come back beside another that has it.
    await changeThing('pair', first.id, { version: 2, mark: 'A1' }, who);
    await changeThing('pair', first.id, { version: 3, struck: true }, who);
    expect(await final(3, 'A1')).toMatchObject({ state: 'changed' });
    const back = await changeThing('pair', first.id, { version: 4, struck: false }, who);
    expect(back).toMatchObject(taken);
  });

  it('keeps a fit, its features and their parts while a final pair stands on them', async () => {
    const own = await aJob();
    const made = {
      ...pair(),
      id: uuidv7(),
      jobId: own.jobId,
      fitId: own.fit.id,
      internalPieceId: own.liners[0]!.id,
      externalPieceId: own.plungers[0]!.id,
      state: 'final' as const,
    };
    const stood = [
      ['fit', own.fit.id],
      ['feature', own.bore.id],
      ['feature', own.outside.id],
      ['part', own.liner.id],
      ['part', own.plunger.id],
    ] as const;
    const strike = (kind: (typeof stood)[number][0], id: string, version = 1, struck = true) =>
      changeThing(kind, id, { version, struck }, who);
    await makeThing('pair', made, who);
    for (const [kind, id] of stood) {
      const refusedAs = { state: 'refused', code: 'final-pairs', at: 'struck' };
      expect(await strike(kind, id)).toMatchObject(refusedAs);
    }
    await changeThing('pair', made.id, { version: 1, state: 'undone', reason: 'worn' }, who);
    for (const [kind, id] of stood) {
      expect((await strike(kind, id)).state).toBe('changed');
      const back = await strike(kind, id, 2, false);
      expect(back).toMatchObject({ state: 'changed', row: { struckAt: null } });
    }
  });

  it('lets a pair that is struck out hold nothing', async () => {
    const own = await aJob();
    const fresh = () => ({
      ...pair(),
      id: uuidv7(),
      jobId: own.jobId,
      fitId: own.fit.id,
      internalPieceId: own.liners[0]!.id,
      externalPieceId: own.plungers[0]!.id,
    });
    const first = fresh();
    await makeThing('pair', first, who);
    await changeThing('pair', first.id, { version: 1, struck: true }, who);
    expect((await makeThing('pair', fresh(), who)).state).toBe('made');
    const back = await changeThing('pair', first.id, { version: 2, struck: false }, who);
    expect(back).toMatchObject({ state: 'refused', code: 'piece-taken' });
  });
});

describe('what is kept of how a fit was said', () => {
  it('takes a fit that says nothing of rule and temperatures, as an earlier program would', async () => {
    const plain = { ...newFit(job.bore.id, job.outside.id), jobId: job.jobId };
    const made = await makeThing('fit', plain, who);
    expect(made).toMatchObject({ state: 'made', row: { atPm: null, ruleName: null } });
    expect(await makeThing('fit', plain, who)).toMatchObject({ state: 'known' });
  });

  it('keeps a rule with the fit, and refuses a range of temperatures upside down', async () => {
    const said = {
      way: 'rule' as const, atPm: 18_000_000_000, ruleName: 'Running', ruleFixedPm: 25_400_000,
      ruleMinNmPerMm: 1100, ruleAimNmPerMm: 1500, ruleMaxNmPerMm: 1900,
      soakedLowMilliC: -10_000, soakedHighMilliC: 80_000,
    }; // prettier-ignore
    const fresh = { ...newFit(job.bore.id, job.outside.id), jobId: job.jobId, ...said };
    expect(await makeThing('fit', fresh, who)).toMatchObject({ state: 'made', row: said });
    const down = await changeThing('fit', fresh.id, { version: 1, soakedLowMilliC: 90_000 }, who);
    expect(down).toMatchObject({ state: 'refused', code: 'limits-crossed', at: 'soakedLowMilliC' });
    const plain = { version: 1, way: 'limits' as const, ruleName: null };
    expect(await changeThing('fit', fresh.id, plain, who)).toMatchObject({ row: { version: 2 } });
  });

  it.each([
    ['a material whose least is above it', 'material', { lowNanoPerC: 17_000 }, 'lowNanoPerC'],
    ['a material whose most is below it', 'material', { highNanoPerC: 16_600 }, 'highNanoPerC'],
    ['a rule without a band', 'fitRule', { minNmPerMm: 250 }, 'minNmPerMm'],
    ['a rule whose aim is outside', 'fitRule', { aimNmPerMm: 300 }, 'aimNmPerMm'],
  ] as const)('refuses %s', async (_, kind, over, at) => {
    const fresh = { ...samples()[kind], ...over };
    expect(await makeThing(kind, fresh as never, who)).toMatchObject({ state: 'refused', at });
  });
});
