import { describe, expect, it } from 'vitest';
import { addresses } from '@/lib/http/addresses';
import { uuidv7 } from '@/lib/store/uuid';
import { newGauge } from '../store/a-job';
import { codeOf, rawRequest, startApi } from './api';

const api = await startApi();
const { server, headers } = api;

describe('an address', () => {
  it('that is none is a problem, at every depth and for every method', async () => {
    for (const path of ['/nothing', '/jobs/x/y/z', '/../nothing']) {
      const answer = await api.get(path);
      expect([answer.status, codeOf(answer)]).toEqual([404, 'no-such-address']);
    }
    const posted = await api.post('/nothing', {});
    expect([posted.status, codeOf(posted)]).toEqual([404, 'no-such-address']);
  });

  it.each(['/gauges', '/jobs', '/readings', '/health'])(
    '%s answers a method it does not take',
    async (path) => {
      const answer = await fetch(api.url(path), { method: 'DELETE', headers });
      expect(answer.status).toBe(405);
      expect(answer.headers.get('content-type')).toBe('application/problem+json');
      expect(answer.headers.get('allow')).toMatch(/GET|POST/);
    },
  );

  it.each([
    '/gauges/nonsense',
    `/gauges/${uuidv7()}`,
    '/gauges/%00',
    '/jobs/x/sheet',
    '/pictures/x/file',
  ])('%s names no thing there is', async (path) => {
    const answer = await api.get(path);
    expect([answer.status, codeOf(answer)]).toEqual([404, 'no-such-thing']);
  });

  it('never has its answer kept on the way', async () => {
    for (const path of ['/gauges', '/health', '/nothing']) {
      expect((await api.get(path)).headers.get('cache-control')).toBe('no-store');
    }
  });
});

describe('a change', () => {
  const gauge = () => JSON.stringify(newGauge());
  const wrongHosts = { origin: 'http://evil.example', host: 'evil.example' };
  const { origin, ...noOrigin } = headers;
  const { 'content-type': _type, ...noType } = headers;

  it.each([
    ['from another site', { ...headers, origin: 'http://evil.example' }, 403, 'other-site'],
    [
      'from another port of this machine',
      { ...headers, origin: 'http://127.0.0.1:1' },
      403,
      'other-site',
    ],
    [
      'from localhost to 127.0.0.1',
      { ...headers, origin: origin.replace('127.0.0.1', 'localhost') },
      403,
      'other-site',
    ],
    ['from a sandboxed page', { ...headers, origin: 'null' }, 403, 'other-site'],
    [
      'from https, where this is http, by its port',
      { ...headers, origin: 'https://127.0.0.1' },
      403,
      'other-site',
    ],
    ['from nowhere', noOrigin, 403, 'origin-missing'],
    [
      'a browser calls cross-site',
      { ...headers, 'sec-fetch-site': 'cross-site' },
      403,
      'other-site',
    ],
    ['a browser calls same-site', { ...headers, 'sec-fetch-site': 'same-site' }, 403, 'other-site'],
    [
      'sent as a form',
      { ...headers, 'content-type': 'application/x-www-form-urlencoded' },
      415,
      'content-type',
    ],
    ['sent as text', { ...headers, 'content-type': 'text/plain' }, 415, 'content-type'],
    ['sent as nothing', noType, 415, 'content-type'],
    ['sent compressed', { ...headers, 'content-encoding': 'br' }, 415, 'content-type'],
  ])('%s is turned away and changes nothing', async (_, sent, status, code) => {
    const before = (await api.get<{ seq: number }>('/health')).body.seq;
    for (const [method, path] of [
      ['POST', '/gauges'],
      ['POST', '/readings'],
      ['PATCH', `/gauges/${uuidv7()}`],
    ] as const) {
      const answer = await rawRequest(api.url(path), { method, headers: sent, body: gauge() });
      expect([answer.status, (JSON.parse(answer.text) as { type: string }).type]).toEqual([
        status,
        `/problems/${code}`,
      ]);
      expect(answer.headers['access-control-allow-origin']).toBeUndefined();
    }
    expect((await api.get<{ seq: number }>('/health')).body.seq).toBe(before);
  });

  it('under a name that is not this machine is not even heard', async () => {
    const answer = await rawRequest(api.url('/gauges'), {
      method: 'POST',
      headers: { ...headers, ...wrongHosts },
      body: gauge(),
    });
    expect(answer.status).toBe(421);
  });

  it('from a page of another site is not allowed by a preflight', async () => {
    const answer = await rawRequest(api.url('/gauges'), {
      method: 'OPTIONS',
      headers: {
        origin: 'http://evil.example',
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'content-type,fitwright-device',
      },
    });
    expect(answer.status).toBe(204);
    expect(Object.keys(answer.headers).filter((name) => name.startsWith('access-control'))).toEqual(
      [],
    );
  });

  it('from this server, said as a browser says it, is taken', async () => {
    const sent = { ...headers, 'sec-fetch-site': 'same-origin', 'sec-fetch-mode': 'cors' };
    const answer = await rawRequest(api.url('/gauges'), {
      method: 'POST',
      headers: sent,
      body: gauge(),
    });
    expect(answer.status).toBe(201);
  });

  it('says which device makes it', async () => {
    for (const device of ['', 'x', 'shop']) {
      const answer = await api.post('/gauges', newGauge(), { 'fitwright-device': device });
      expect([answer.status, codeOf(answer)]).toEqual([400, 'who-missing']);
    }
    const answer = await api.post('/gauges', newGauge(), { 'fitwright-person': 'Ruth' });
    expect([answer.status, codeOf(answer)]).toEqual([400, 'who-missing']);
  });
});

describe('a body', () => {
  it.each([
    ['that is not JSON', '{"name":', 400, 'not-json', undefined],
    ['of another shape', '{}', 422, 'wrong-shape', 'id'],
    [
      'with a field nobody knows',
      JSON.stringify({ ...newGauge(), colour: 'red' }),
      422,
      'wrong-shape',
      '',
    ],
    [
      'with too long a text',
      JSON.stringify({ ...newGauge(), name: 'x'.repeat(121) }),
      422,
      'wrong-shape',
      'name',
    ],
    [
      'with a length that is no whole number',
      JSON.stringify({ ...newGauge(), resolutionPm: 0.5 }),
      422,
      'wrong-shape',
      'resolutionPm',
    ],
    [
      'with a length no double holds',
      JSON.stringify({ ...newGauge(), resolutionPm: 2 ** 53 }),
      422,
      'wrong-shape',
      'resolutionPm',
    ],
    [
      'with a character no database keeps',
      JSON.stringify({ ...newGauge(), name: 'a\0' }),
      422,
      'wrong-shape',
      'name',
    ],
    [
      'with half a character',
      JSON.stringify({ ...newGauge(), note: '\ud800' }),
      422,
      'wrong-shape',
      'note',
    ],
    ['nested without end', '['.repeat(400_000), 400, 'not-json', undefined],
  ])('%s is a problem that says where', async (_, body, status, code, at) => {
    const answer = await api.post('/gauges', body);
    expect([answer.status, codeOf(answer)]).toEqual([status, code]);
    expect((answer.body['errors'] as { at: string }[])[0]?.at).toBe(at);
  });

  it('of a megabyte is read, and of more is not', async () => {
    const padded = (bytes: number) => `${' '.repeat(bytes)}{}`;
    expect(codeOf(await api.post('/gauges', padded(999_990)))).toBe('wrong-shape');
    const larger = await api.post('/gauges', padded(1_000_000));
    expect([larger.status, codeOf(larger)]).toEqual([413, 'body-too-large']);
  });

  it('without an announced length is read no further than a megabyte', async () => {
    let sent = 0;
    const body = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 65_536;
        if (sent > 40_000_000) controller.close();
        else controller.enqueue(new Uint8Array(65_536).fill(0x20));
      },
    });
    const outcome = await fetch(api.url('/gauges'), {
      method: 'POST',
      headers,
      body,
      duplex: 'half',
    } as RequestInit).then(
      ({ status }) => status,
      () => 'cut off',
    );
    expect([413, 'cut off']).toContain(outcome);
    expect(sent).toBeLessThan(40_000_000);
  });
});

describe('GET', () => {
  it('changes nothing at any address', async () => {
    const { body: made } = await api.post<{ id: string }>('/gauges', newGauge());
    const before = (await api.get<{ seq: number }>('/health')).body.seq;
    for (const { path } of addresses) {
      const filled = path.replace('{id}', made.id);
      const gone = new AbortController();
      const response = await fetch(`${api.url(filled)}?job=${made.id}`, { signal: gone.signal });
      expect(response.status).toBeLessThan(500);
      gone.abort();
    }
    expect((await api.get<{ seq: number }>('/health')).body.seq).toBe(before);
  });
});

describe('the log', () => {
  it('has no word of what was refused as a mistake of the program', () => {
    expect(server.output()).not.toMatch(/Error|problem/);
  });
});
