import { describe, expect, it } from 'vitest';
import { createSend } from '@/lib/outbox/fetch-json';
import { ProblemError } from '@/lib/outbox/problem-error';
import { createClock } from './clock';
import { quiet } from './world';

function client(fetch: (url: string, init: RequestInit) => Promise<Response>) {
  const clock = createClock(0);
  const asked: [string, RequestInit][] = [];
  let person: string | null = null;
  const send = createSend(
    {
      after: clock.after,
      fetch: (url, init) => {
        asked.push([url, init]);
        return fetch(url, init);
      },
    },
    { deviceId: async () => 'device-1', personId: () => person },
  );
  return { send, asked, clock, setPerson: (id: string | null) => (person = id) };
}
const failure = (promise: Promise<unknown>) => promise.catch((error: unknown) => error);

describe('send', () => {
  it('brings JSON there and back, with who asks in the headers', async () => {
    const { send, asked, setPerson } = client(async () => Response.json({ id: 'p', version: 2 }));
    setPerson('person-1');
    const row = await send<{ version: number }>('PATCH', '/api/v1/pieces/p', { mark: 'L1' });
    expect(row.version).toBe(2);
    expect(asked[0]).toMatchObject([
      '/api/v1/pieces/p',
      {
        method: 'PATCH',
        headers: {
          'content-type': 'application/json',
          'fitwright-device': 'device-1',
          'fitwright-person': 'person-1',
        },
        body: '{"mark":"L1"}',
      },
    ]);
  });

  it('names no person where nobody is measuring, and no content where there is none', async () => {
    const { send, asked } = client(async () => Response.json([]));
    await send('GET', '/api/v1/gauges');
    expect(asked[0]![1].headers).toEqual({ 'fitwright-device': 'device-1' });
    expect(asked[0]![1]).not.toHaveProperty('body');
  });

  it('gives undefined for an answer without a body', async () => {
    const { send } = client(async () => new Response(null, { status: 204 }));
    expect(await send('POST', '/api/v1/x', {})).toBeUndefined();
  });

  it('throws a refusal with both texts of a stale change', async () => {
    const problem = {
      type: '/problems/stale-version',
      status: 409,
      title: 'It was changed meanwhile',
      errors: [{ at: 'version', says: 'is 3 by now' }, { at: 4 }],
      current: { version: 3, mark: 'L1b' },
      yours: { version: 2, mark: 'L1a' },
    };
    const { send } = client(async () =>
      Response.json(problem, {
        status: 409,
        headers: { 'content-type': 'application/problem+json' },
      }),
    );
    const error = await failure(send('PATCH', '/api/v1/pieces/p', {}));
    expect(error).toBeInstanceOf(ProblemError);
    expect(error).toMatchObject({
      status: 409,
      code: 'stale-version',
      title: 'It was changed meanwhile',
      errors: [{ at: 'version', says: 'is 3 by now' }],
      current: problem.current,
      yours: problem.yours,
    });
  });

  it.each(['', '<html>502</html>', '"no"', 'null'])(
    'throws a refusal that says nothing of use: %j',
    async (text) => {
      const { send } = client(async () => new Response(text, { status: 502 }));
      const error = await failure(send('GET', '/api/v1/x'));
      expect(error).toMatchObject({ status: 502, code: 'status-502', title: '', errors: [] });
      expect(error).not.toHaveProperty('current');
    },
  );

  it('does not take a page of somebody else for an answer', async () => {
    const { send } = client(async () => new Response('<h1>Guest network</h1>'));
    const error = await failure(send('GET', '/api/v1/x'));
    expect(error).toMatchObject({ status: 200, code: 'not-understood' });
  });

  it('tells no network from no answer in time, and gives up the late request', async () => {
    const cut = client(() => Promise.reject(new TypeError('Failed to fetch')));
    expect(await failure(cut.send('GET', '/x'))).toMatchObject({ status: 0, code: 'no-network' });

    const slow = client(() => new Promise<Response>(() => undefined));
    const late = failure(slow.send('GET', '/x'));
    await quiet();
    slow.clock.advance(15_000);
    expect(await late).toMatchObject({ status: 0, code: 'no-answer' });
    expect(slow.asked[0]![1].signal?.aborted).toBe(true);
  });
});
