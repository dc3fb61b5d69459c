import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { migrate } from '@/lib/command/migrate.mjs';
import { changeThing } from '@/lib/store/change-thing';
import { changesAfter } from '@/lib/store/changes-after';
import { closeStore } from '@/lib/store/client';
import { findThings } from '@/lib/store/find-things';
import { gaugeUsage } from '@/lib/store/gauge-usage';
import { jobSheet } from '@/lib/store/job-sheet';
import { jobsRegister } from '@/lib/store/jobs-register';
import { makeThing } from '@/lib/store/make-thing';
import { keepCorrections, keepReadings } from '@/lib/store/readings';
import { uuidv7 } from '@/lib/store/uuid';
import { aJob, correctionOf, newGauge, who } from './a-job';
import { aPng } from './a-picture';

const folder = mkdtempSync(join(tmpdir(), 'fitwright-both-'));
const underTest = process.env['DATABASE_URL']!;
const beside = `file:${join(folder, 'beside.db')}`;
afterAll(async () => {
  await closeStore();
  process.env['DATABASE_URL'] = underTest;
  rmSync(folder, { recursive: true });
});

it('says the same, row for row and letter for letter, as a SQLite notebook with the same history', async () => {
  const here = await history();
  await closeStore();
  process.env['DATABASE_URL'] = beside;
  await migrate(beside);
  const there = await history();
  expect(here.length).toBeGreaterThan(5000);
  expect(here).toBe(there);
});

/** Lives through a little of everything and writes down all that can be read afterwards. */
async function history(): Promise<string> {
  const job = await aJob();
  const { jobId } = job;
  const ruth = { id: uuidv7(), name: 'Ruth Ångström' };
  const picture = { id: uuidv7(), jobId, name: 'Sheet', base64: aPng(3, 2).toString('base64') };
  await makeThing('gauge', taughtGauge(), who);
  await makeThing('person', ruth, who);
  await makeThing('picture', picture, who);
  for (const share of [0.1, 2 / 3, 1e-9, 0.30000000000000004, 1]) {
    const [feature] = await findThings('feature', { id: job.bore.id });
    const change = {
      version: feature!.version,
      pictureId: picture.id,
      pictureX: share,
      pictureY: share,
    };
    await changeThing('feature', job.bore.id, change, who);
  }
  const cut = {
    id: uuidv7(), jobId, pieceId: job.plungers[0]!.id, featureId: job.outside.id, ordinal: 1,
    lastReadingId: null, spring: false, askedPm: 1, beforePm: 9_007_199_254_740_991, afterPm: null, tool: '',
  }; // prettier-ignore
  await makeThing('cut', cut, who);
  await makeThing('cut', { ...cut, id: uuidv7(), ordinal: 2, spring: true, askedPm: 0 }, who);
  const fit = { version: 1, purpose: 'most likely' as const, leftOutPieceIds: [job.liners[1]!.id] };
  await changeThing('fit', job.fit.id, fit, who);
  const side = {
    sizePm: 18_003_000_000, gaugeId: job.gaugeId, readings: [{ at: 'top A', id: uuidv7(), valuePm: 1 }],
    expandedPm: 400_000, gaugeStruck: false, resolutionPm: 1_000_000, gaugeUncertaintyPm: null,
  }; // prettier-ignore
  const look = {
    at: '2026-11-25T09:30:00.000+01:00', act: 'made final' as const, maxPm: 3, minPm: -2,
    governs: 'mean' as const, external: side, internal: null, personId: ruth.id, clearancePm: -1,
    externalFate: 'scrapped' as const, internalFate: null, uncertaintyPm: 9_007_199_254_740_991,
  }; // prettier-ignore
  const pair = {
    id: uuidv7(), jobId, fitId: job.fit.id, internalPieceId: job.liners[0]!.id,
    externalPieceId: job.plungers[0]!.id, state: 'final' as const, mark: '1', clearancePm: -1,
    uncertaintyPm: 2, decidedAt: look.at, personId: ruth.id, looks: [look],
  }; // prettier-ignore
  await makeThing('pair', pair, who);
  const undone = { version: 1, state: 'undone' as const, reason: 'worn', looks: [look, look] };
  await changeThing('pair', pair.id, undone, who);
  await changeThing('piece', job.liners[2]!.id, { version: 1, struck: true, note: 'dropped' }, who);
  const odd = job.reading({
    text: '\t0,709"',
    valuePm: -1,
    personId: ruth.id,
    heldAs: 'other unit',
  });
  const batches = [
    await keepReadings({
      deviceId: who.deviceId,
      entries: [odd, job.reading(), odd, 7, job.reading()],
    }),
    await keepReadings({ deviceId: who.deviceId, entries: [odd, { ...odd, text: 'x' }] }),
    await keepCorrections({
      deviceId: who.deviceId,
      entries: [correctionOf(odd.id), correctionOf(uuidv7(), { kind: 'restore' })],
    }),
  ];
  const all = {
    batches,
    pairs: await findThings('pair', { jobId }),
    sheet: await jobSheet(jobId),
    register: await jobsRegister(),
    usage: await gaugeUsage(),
    changes: (await changesAfter(0, 1000)).map((change, i) => ({ ...change, seq: i })),
  };
  return plain({ ...all, sheet: { ...all.sheet, seq: 'last' } });
}

/** One with all that is known of how it sends. */
const taughtGauge = () => ({
  ...newGauge(),
  sendsEnd: 'nothing' as const,
  sendsMark: ',' as const,
  sendsUnit: 'button' as const,
  sendsPlaces: 2,
  sendsPlus: true,
  sendsPrefix: 'A ',
  sendsPauseMs: 200,
  serialBaud: 4800,
  serialFrame: '7E2' as const,
});

/** Ids by the order in which they appear, and no moments: the two histories were lived one after the other. */
function plain(value: unknown): string {
  const ids = new Map<string, string>();
  return JSON.stringify(value, null, 1)
    .replaceAll(/"20\d\d-\d\d-\d\dT[\d:.]+Z"/g, '"then"')
    .replaceAll(/"deviceSeq": \d+/g, '"deviceSeq": "rising"')
    .replaceAll(/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/g, (id) => {
      if (!ids.has(id)) ids.set(id, `id ${ids.size}`);
      return ids.get(id)!;
    });
}
