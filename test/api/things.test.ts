import { describe, expect, it } from 'vitest';
import { kindNames } from '@/lib/http/kind-names';
import { JobSheet } from '@/lib/schema/sheet';
import { untaughtGauge } from '@/lib/rules/untaught-gauge';
import { things } from '@/lib/schema/things';
import { uuidv7 } from '@/lib/store/uuid';
import { jobStart, newGauge } from '../store/a-job';
import { aPng } from '../store/a-picture';
import { codeOf, startApi } from './api';

const api = await startApi();

describe('things', () => {
  it('are made once, shown, listed and changed', async () => {
    const gauge = newGauge();
    const made = await api.post('/gauges', gauge);
    expect(made.status).toBe(201);
    expect(made.headers.get('location')).toBe(`/api/v1/gauges/${gauge.id}`);
    expect(things.gauge.Row.parse(made.body)).toMatchObject({ ...gauge, version: 1 });
    const again = await api.post('/gauges', gauge);
    expect([again.status, again.body]).toEqual([200, made.body]);
    expect((await api.get(`/gauges/${gauge.id}`)).body).toEqual(made.body);
    const { body } = await api.get<{ rows: unknown[] }>('/gauges');
    expect(body.rows).toContainEqual(made.body);
    const changed = await api.patch(`/gauges/${gauge.id}`, { version: 1, name: 'Other' });
    expect(changed.body).toEqual({ ...made.body, version: 2, name: 'Other' });
    expect((await api.get(`/gauges/${gauge.id}`)).body).toEqual(changed.body);
  });

  it('answer a stale change with both texts', async () => {
    const gauge = newGauge();
    await api.post('/gauges', gauge);
    const { body: current } = await api.patch(`/gauges/${gauge.id}`, { version: 1, name: 'Hers' });
    const yours = { version: 1, name: 'His' };
    const stale = await api.patch(`/gauges/${gauge.id}`, yours);
    expect([stale.status, codeOf(stale)]).toEqual([409, 'stale']);
    expect(stale.body).toMatchObject({ yours, current });
  });

  it('are refused with the code of what makes no sense', async () => {
    const gauge = newGauge();
    await api.post('/gauges', gauge);
    const other = await api.post('/gauges', { ...gauge, name: 'Other' });
    expect([other.status, codeOf(other)]).toEqual([422, 'other-content']);
    const crossed = await api.post('/gauges', { ...newGauge(), rangeLowPm: 2, rangeHighPm: 1 });
    expect([crossed.status, codeOf(crossed)]).toEqual([422, 'limits-crossed']);
    expect(crossed.body['errors']).toEqual([
      { at: 'rangeLowPm', says: 'The lower limit is above the upper one' },
    ]);
  });

  it('keep how a gauge sends, as it was taught, and leave the rest of it alone', async () => {
    const gauge = newGauge();
    const made = await api.post('/gauges', gauge);
    expect(made.body).toMatchObject({ ...untaughtGauge });
    const taught = {
      sendsEnd: 'nothing',
      sendsMark: ',',
      sendsUnit: 'button',
      sendsPlaces: 2,
      sendsPlus: true,
      sendsPrefix: 'A',
      sendsPauseMs: 200,
      serialBaud: 4800,
      serialFrame: '7E2',
    };
    const changed = await api.patch(`/gauges/${gauge.id}`, { version: 1, ...taught });
    expect(changed.body).toEqual({ ...made.body, ...taught, version: 2 });
    const { body } = await api.get<{ rows: unknown[] }>('/gauges');
    expect(body.rows).toContainEqual(changed.body);
    for (const odd of [{ sendsPauseMs: 49 }, { sendsPauseMs: 501 }, { serialFrame: '9N1' }]) {
      const { status } = await api.patch(`/gauges/${gauge.id}`, { version: 2, ...odd });
      expect(status).toBe(422);
    }
    const twice = await api.patch(`/gauges/${gauge.id}`, { version: 2, sendsEnd: 'comma' });
    expect([twice.status, codeOf(twice)]).toEqual([422, 'comma-twice']);
  });

  it('are changed only where they are', async () => {
    const answer = await api.patch(`/gauges/${uuidv7()}`, { version: 1, name: 'x' });
    expect([answer.status, codeOf(answer)]).toEqual([404, 'no-such-thing']);
    const odd = await api.patch('/gauges/x', { version: 1, name: 'x' });
    expect([odd.status, codeOf(odd)]).toEqual([404, 'no-such-thing']);
  });

  it('of a job are listed by job', async () => {
    const start = jobStart(2);
    await api.post('/jobs/start', start);
    const { body } = await api.get<{ rows: { mark: string }[] }>(`/pieces?job=${start.job.id}`);
    expect(body.rows.map(({ mark }) => mark).toSorted()).toEqual(['L1', 'L2', 'P1', 'P2']);
    for (const query of ['', '?job=x', '?job=']) {
      const without = await api.get(`/pieces${query}`);
      expect([without.status, codeOf(without)]).toEqual([422, 'wrong-shape']);
    }
  });

  it.each(Object.values(kindNames))(
    'at /%s are listed and do not know a stranger',
    async (name) => {
      const list = await api.get<{ rows: unknown[] }>(`/${name}?job=${uuidv7()}`);
      expect([list.status, Array.isArray(list.body.rows)]).toEqual([200, true]);
      expect((await api.get(`/${name}/${uuidv7()}`)).status).toBe(404);
      const { status } = await api.post(`/${name}`, {});
      expect(status).toBe(422);
    },
  );

  it('remember who changed them', async () => {
    const ruth = uuidv7();
    const { body: health } = await api.get<{ seq: number }>('/health');
    await api.post('/gauges', newGauge(), { 'fitwright-person': ruth });
    const gone = new AbortController();
    const response = await fetch(api.url(`/live?after=${health.seq}`), { signal: gone.signal });
    const reader = response.body!.getReader();
    let text = '';
    while (!text.includes('"thing":"gauge"'))
      text += new TextDecoder().decode((await reader.read()).value);
    gone.abort();
    expect(text).toContain(`"personId":"${ruth}","deviceId":"${api.deviceId}"`);
  });
});

describe('a job', () => {
  it('is started in one request, once, and read back in one', async () => {
    const start = jobStart(3);
    const started = await api.post('/jobs/start', start);
    expect([started.status, started.body]).toEqual([201, { jobId: start.job.id }]);
    const again = await api.post('/jobs/start', start);
    expect([again.status, again.body]).toEqual([200, { jobId: start.job.id }]);
    const { body } = await api.get(`/jobs/${start.job.id}/sheet`);
    const sheet = JobSheet.parse(body);
    expect(sheet.pieces).toHaveLength(5);
    expect(sheet.features).toMatchObject(start.features);
  });

  it('takes no second final pair with a mark that another carries', async () => {
    const start = jobStart();
    const jobId = start.job.id;
    await api.post('/jobs/start', start);
    const { pieces } = (await api.get<JobSheet>(`/jobs/${jobId}/sheet`)).body;
    const of = (part: number) => pieces.filter(({ partId }) => partId === start.parts[part]!.id);
    const pair = (place: number) => ({
      id: uuidv7(),
      jobId,
      fitId: start.fits[0]!.id,
      internalPieceId: of(0)[place]!.id,
      externalPieceId: of(1)[place]!.id,
      state: 'final',
      mark: 'A1',
      clearancePm: null,
      uncertaintyPm: null,
      decidedAt: null,
      personId: null,
    });
    expect((await api.post('/pairs', pair(0))).status).toBe(201);
    const second = pair(1);
    const refused = await api.post('/pairs', second);
    expect([refused.status, codeOf(refused)]).toEqual([422, 'pair-mark-taken']);
    expect(refused.body['errors']).toEqual([
      { at: 'mark', says: 'Another final pair of this fit carries this mark' },
    ]);
    expect((await api.post('/pairs', { ...second, mark: 'B1' })).status).toBe(201);
    const changed = await api.patch(`/pairs/${second.id}`, { version: 1, mark: 'a1' });
    expect([changed.status, codeOf(changed)]).toEqual([422, 'pair-mark-taken']);
  });

  it('says of pieces that are over, and makes those that lack', async () => {
    const start = jobStart(2);
    await api.post('/jobs/start', start);
    const part = `/parts/${start.parts[0]!.id}`;
    const fewer = await api.patch(part, { version: 1, quantity: 1 });
    expect(fewer.headers.get('fitwright-says')).toContain('1 more piece counts');
    const more = await api.patch(part, { version: 2, quantity: 3 });
    expect(more.headers.get('fitwright-says')).toBeNull();
    const { body } = await api.get<{ rows: unknown[] }>(`/pieces?job=${start.job.id}`);
    expect(body.rows).toHaveLength(5);
  });

  it('is the example, once, however often it is loaded', async () => {
    const [first, second] = [await api.post('/example', {}), await api.post('/example', {})];
    expect([first.status, second.status, second.body]).toEqual([200, 200, first.body]);
    const { body } = await api.get(`/jobs/${String(first.body['jobId'])}/sheet`);
    const { readings, cuts, pieces, pictures, features } = JobSheet.parse(body);
    expect(readings.length).toBeGreaterThan(50);
    // The piece on the lathe: what it was before each of its cuts stands in the book before what it is.
    const turned = pieces.find(({ mark }) => mark === 'P7')!.id;
    const read = readings.filter(({ pieceId }) => pieceId === turned);
    expect(read.map(({ text }) => text)).toEqual([
      '18.590',
      '18.405',
      '18.217',
      '18.086',
      '18.087',
      '18.086',
    ]);
    expect(cuts.map(({ lastReadingId }) => lastReadingId)).toEqual(
      read.slice(0, 3).map(({ id }) => id),
    );
    expect(pictures).toMatchObject([{ mediaType: 'image/png', widthPx: 768, heightPx: 756 }]);
    const placed = features.filter(({ pictureId }) => pictureId === pictures[0]!.id);
    expect(placed.map(({ balloon }) => balloon).sort()).toEqual(['1', '2', '3', '4', '5', '6']);
  });
});

describe('a picture', () => {
  it('is given back byte for byte, to be shown and nothing else', async () => {
    const start = jobStart(1);
    await api.post('/jobs/start', start);
    const bytes = aPng(30, 20);
    const id = uuidv7();
    const picture = { id, jobId: start.job.id, name: 'Sheet 1', base64: bytes.toString('base64') };
    const made = await api.post('/pictures', picture);
    expect(made.body).toMatchObject({ mediaType: 'image/png', widthPx: 30, heightPx: 20 });
    const response = await fetch(api.url(`/pictures/${id}/file`));
    expect(Buffer.from(await response.arrayBuffer()).equals(bytes)).toBe(true);
    const { headers } = response;
    expect(headers.get('content-type')).toBe('image/png');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
    expect(headers.get('content-security-policy')).toBe("default-src 'none'; sandbox");
  });

  it('may be eight megabytes, and no body more than twelve', async () => {
    const start = jobStart(1);
    await api.post('/jobs/start', start);
    const picture = (bytes: Buffer) => ({
      id: uuidv7(),
      jobId: start.job.id,
      name: 'Sheet',
      base64: bytes.toString('base64'),
    });
    const largest = Buffer.concat([aPng(2, 2), Buffer.alloc(8_000_000 - aPng(2, 2).length)]);
    expect((await api.post('/pictures', picture(largest))).status).toBe(201);
    const larger = await api.post('/pictures', picture(Buffer.concat([largest, Buffer.alloc(1)])));
    expect([larger.status, codeOf(larger)]).toEqual([422, 'picture-too-large']);
    const far = await api.post('/pictures', picture(Buffer.alloc(9_100_000)));
    expect([far.status, codeOf(far)]).toEqual([413, 'body-too-large']);
    const text = await api.post('/pictures', picture(Buffer.from('<svg/>')));
    expect([text.status, codeOf(text)]).toEqual([422, 'not-a-picture']);
  });
});
