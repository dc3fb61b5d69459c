import { beforeAll, describe, expect, it } from 'vitest';
import type { NewReading, Outcome, Reading } from '@/lib/schema/reading';
import type { JobSheet } from '@/lib/schema/sheet';
import { uuidv7 } from '@/lib/store/uuid';
import { correctionOf, jobStart, newGauge } from '../store/a-job';
import { codeOf, startApi } from './api';

const api = await startApi();
const start = jobStart(2);
const gauge = newGauge();
let like: Omit<NewReading, 'id' | 'deviceSeq'>;
let deviceSeq = 0;

beforeAll(async () => {
  await api.post('/jobs/start', start);
  await api.post('/gauges', gauge);
  const [piece] = (await sheet()).pieces;
  like = {
    pieceId: piece!.id,
    featureId: start.features.find(({ partId }) => partId === piece!.partId)!.id,
    gaugeId: gauge.id,
    personId: null,
    deviceTime: '2026-11-25T09:00:00+01:00',
    text: '18.003',
    unit: 'mm',
    valuePm: 18_003_000_000,
    resolutionPm: 1_000_000,
    station: 'mouth',
    direction: 'along',
    temperatureMilliC: null,
    heldAs: null,
  };
});

async function sheet(): Promise<JobSheet> {
  return (await api.get<JobSheet>(`/jobs/${start.job.id}/sheet`)).body;
}

function reading(more: Partial<NewReading> = {}): NewReading {
  deviceSeq += 1;
  return { ...like, id: uuidv7(), deviceSeq, ...more };
}

const send = (entries: unknown[], deviceId = api.deviceId, path = '/readings') =>
  api.post<{ outcomes: Outcome[] }>(path, { deviceId, entries });

describe('a batch of readings', () => {
  it('is answered entry by entry, in the order sent', async () => {
    const good = [reading(), reading()];
    const { status, body } = await send([
      good[0],
      { id: 'x' },
      good[1],
      good[0],
      reading({ gaugeId: uuidv7() }),
    ]);
    expect(status).toBe(200);
    expect(body.outcomes.map((one) => ('code' in one ? one.code : one.state))).toEqual([
      'kept',
      'reading/wrong-shape',
      'kept',
      'known',
      'reading/no-such-gauge',
    ]);
    const kept = (await sheet()).readings.filter(({ id }) => good.some((one) => one.id === id));
    expect(kept).toMatchObject(good);
  });

  it('may be sent again after a lost answer', async () => {
    const entries = Array.from({ length: 20 }, () => reading());
    const [first, second] = [await send(entries), await send(entries)];
    expect(second.body.outcomes).toEqual(
      first.body.outcomes.map((outcome) => ({ ...outcome, state: 'known' })),
    );
  });

  it('has a hundred entries at most, and one at least', async () => {
    expect((await send(Array.from({ length: 100 }, () => reading()))).status).toBe(200);
    for (const entries of [Array.from({ length: 101 }, () => reading()), []]) {
      const answer = await api.post('/readings', { deviceId: api.deviceId, entries });
      expect([answer.status, codeOf(answer)]).toEqual([422, 'wrong-shape']);
    }
  });

  it('says which device sends it, and nothing else beside', async () => {
    for (const body of [
      { entries: [reading()] },
      { deviceId: 'x', entries: [reading()] },
      [reading()],
    ]) {
      expect(codeOf(await api.post('/readings', body))).toBe('wrong-shape');
    }
    const more = { deviceId: api.deviceId, entries: [reading()], now: 1 };
    expect(codeOf(await api.post('/readings', more))).toBe('wrong-shape');
  });

  it('is not held back by an entry nested very deep', async () => {
    const deep = `${'['.repeat(100_000)}${']'.repeat(100_000)}`;
    const good = reading();
    const body = `{"deviceId":"${api.deviceId}","entries":[${deep},${JSON.stringify(good)}]}`;
    const answer = await api.post<{ outcomes: Outcome[] }>('/readings', body);
    expect(answer.body.outcomes.map(({ state }) => state)).toEqual(['refused', 'kept']);
  });

  it('of clocks that are wrong is in the order of the book, and no clock wins', async () => {
    const devices = [
      '2026-11-24T09:00:00+01:00',
      '2026-11-25T14:00:00+01:00',
      '2099-01-01T00:00:00Z',
    ];
    const sent: string[] = [];
    for (let round = 0; round < 3; round += 1) {
      for (const deviceTime of devices) {
        const one = reading({ deviceTime });
        sent.push(one.id);
        await send([one], uuidv7());
      }
    }
    const kept = (await sheet()).readings.slice(-9);
    expect(kept.map(({ id }) => id)).toEqual(sent);
    const received = kept.map(({ receivedAt }) => receivedAt);
    expect(received).toEqual(received.toSorted());
    const off = kept.map((one: Reading) =>
      Math.abs(Date.parse(one.deviceTime) - Date.parse(one.receivedAt)),
    );
    expect(off.filter((ms) => ms > 120_000).length).toBe(9);
  });
});

describe('a batch of corrections', () => {
  it('is kept beside the readings, which stay as they are', async () => {
    const one = reading();
    await send([one]);
    const early = reading();
    const corrections = [correctionOf(one.id), correctionOf(early.id)].map((correction) => {
      deviceSeq += 1;
      return { ...correction, deviceSeq };
    });
    const answer = await send(corrections, api.deviceId, '/corrections');
    expect(answer.body.outcomes.map(({ state }) => state)).toEqual(['kept', 'kept']);
    await send([early]);
    const now = await sheet();
    expect(now.corrections.map(({ id }) => id)).toEqual(corrections.map(({ id }) => id));
    expect(now.readings.find(({ id }) => id === one.id)).toMatchObject(one);
  });
});
