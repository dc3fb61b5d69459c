import { afterEach, describe, expect, it, vi } from 'vitest';
import { address, methods } from '@/lib/http/address';

const context = { params: Promise.resolve({ id: 'x' }) };
const request = (method: string, headers: Record<string, string> = {}) =>
  new Request('http://127.0.0.1/api/v1/things/x?job=1', { method, headers });
const none = () => undefined;

afterEach(() => vi.restoreAllMocks());

describe('address', () => {
  it('gives a handler the request, the variable parts and the query', async () => {
    const { GET } = address(
      { GET: async ({ params, query }) => Response.json({ ...params, job: query.get('job') }) },
      none,
    );
    const response = await GET(request('GET'), context);
    expect(await response.json()).toEqual({ id: 'x', job: '1' });
    expect(response.headers.get('cache-control')).toBe('no-store');
  });

  it('leaves a handler that says how long its answer may be kept its word', async () => {
    const headers = { 'cache-control': 'private, immutable' };
    const { GET } = address({ GET: async () => new Response('x', { headers }) }, none);
    expect((await GET(request('GET'), context)).headers.get('cache-control')).toBe(
      'private, immutable',
    );
  });

  it('answers other methods with those there are', async () => {
    const handlers = address(
      { GET: async () => new Response(), PATCH: async () => new Response() },
      none,
    );
    for (const method of ['POST', 'PUT', 'DELETE'] as const) {
      const response = await handlers[method](request(method), context);
      expect([response.status, response.headers.get('allow')]).toEqual([405, 'GET, PATCH']);
      expect(response.headers.get('content-type')).toBe('application/problem+json');
    }
    const options = await handlers.OPTIONS(request('OPTIONS'), context);
    expect([options.status, options.headers.get('allow')]).toEqual([204, 'GET, PATCH']);
  });

  it('guards every method that may change something, and lets no handler run before', async () => {
    const ran = vi.fn(async () => new Response());
    const handlers = address(Object.fromEntries(methods.map((method) => [method, ran])), none);
    for (const method of methods.filter((one) => one !== 'GET')) {
      expect((await handlers[method](request(method), context)).status).toBe(403);
    }
    expect(ran).not.toHaveBeenCalled();
    await handlers.GET(request('GET'), context);
    expect(ran).toHaveBeenCalledOnce();
  });

  it('turns what nobody foresaw into a 500 with a reference that is in the log, and no more', async () => {
    const log = vi.spyOn(console, 'error').mockReturnValue();
    const { GET } = address({ GET: async () => Promise.reject(new Error('secret words')) }, none);
    const response = await GET(request('GET'), context);
    const body = (await response.json()) as { type: string; reference: string };
    expect([response.status, body.type]).toEqual([500, '/problems/unforeseen']);
    expect(JSON.stringify(body)).not.toContain('secret');
    expect(body.reference).toMatch(/^[0-9a-f]{8}$/);
    expect(String(log.mock.calls[0]![0])).toContain(`${body.reference} GET /api/v1/things/x`);
    expect(log.mock.calls[0]![1]).toMatchObject({ message: 'secret words' });
  });

  it('names a trouble that is known, and says when to try again', async () => {
    vi.spyOn(console, 'error').mockReturnValue();
    const { GET } = address(
      { GET: async () => Promise.reject(new Error('x')) },
      () => 'database-busy',
    );
    const response = await GET(request('GET'), context);
    expect([response.status, response.headers.get('retry-after')]).toEqual([503, '5']);
  });
});
