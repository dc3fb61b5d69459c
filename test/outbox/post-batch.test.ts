import { describe, expect, it } from 'vitest';
import type { Entry } from '@/lib/outbox/entry';
import { postBatch } from '@/lib/outbox/post-batch';
import { createWorld, keepMany, quiet, voiding, type World } from './world';

async function entriesOf(world: World, count = 2): Promise<[Entry, ...Entry[]]> {
  world.book.broken = 'no network';
  const tab = world.tab();
  const entries = await keepMany(tab, count);
  tab.kill();
  world.book.requests.length = 0;
  return entries as [Entry, ...Entry[]];
}

/** What the batch comes to when the server answers so. */
async function answered(body: unknown, status = 200, headers: Record<string, string> = {}) {
  const world = createWorld();
  const entries = await entriesOf(world);
  const text = JSON.stringify(typeof body === 'function' ? body(entries) : body);
  const fetch = async () => new Response(text, { status, headers });
  return { entries, answer: await postBatch({ ...world.environment(), fetch }, entries, 15_000) };
}

const receivedAt = '2026-11-25T09:00:00.000Z';

describe('one request', () => {
  it('names the device and brings the rows in order, to the address of their kind', async () => {
    const world = createWorld();
    const tab = world.tab();
    world.book.broken = 'no network';
    const [first] = await keepMany(tab, 1);
    const strike = await tab.keep(voiding(first!.id));
    tab.kill();
    const asked: [string, RequestInit][] = [];
    const env = {
      ...world.environment(),
      fetch: async (url: string, init: RequestInit) => {
        asked.push([url, init]);
        return Response.json({ outcomes: [] });
      },
    };
    await postBatch(env, [first!], 15_000);
    await postBatch(env, [strike], 15_000);
    expect(asked.map(([url]) => url)).toEqual(['/api/v1/readings', '/api/v1/corrections']);
    expect(asked[0]![1]).toMatchObject({
      method: 'POST',
      headers: { 'content-type': 'application/json', 'fitwright-device': first!.deviceId },
      body: JSON.stringify({ deviceId: first!.deviceId, entries: [first!.row] }),
    });
  });

  it('takes from an answer only whole outcomes of entries that were sent', async () => {
    const { entries, answer } = await answered((sent: Entry[]) => ({
      outcomes: [
        { id: sent[0]!.id, state: 'kept', seq: 4, receivedAt },
        { id: sent[1]!.id, state: 'kept', receivedAt },
        { id: '019a0000-0000-7000-8000-00000000dead', state: 'kept', seq: 5, receivedAt },
        { id: sent[1]!.id, state: 'perhaps', seq: 5, receivedAt },
        { id: sent[1]!.id, state: 'known', seq: 5 },
        null,
        'kept',
      ],
    }));
    expect(answer).toMatchObject({ kind: 'outcomes' });
    if (answer.kind === 'outcomes') expect([...answer.outcomes.keys()]).toEqual([entries[0]!.id]);
  });

  it.each([
    ['first', 0],
    ['last', 1],
  ])('believes that an entry is kept when an answer also refuses it, kept %s', async (_, at) => {
    const { answer } = await answered(([sent]: Entry[]) => {
      const both = [
        { id: sent!.id, state: 'kept', seq: 4, receivedAt },
        { id: sent!.id, state: 'refused', code: 'twice', at: 'id', says: 'twice' },
      ];
      return { outcomes: at === 0 ? both : both.reverse() };
    });
    if (answer.kind !== 'outcomes') throw new Error(answer.kind);
    expect([...answer.outcomes.values()].map(({ state }) => state)).toEqual(['kept']);
  });

  it.each([
    [{ hello: 'guest' }, 200],
    ['<html>', 200],
    [null, 204 + 2],
  ])('does not understand %j as an answer', async (body, status) => {
    const { answer } = await answered(body, status);
    expect(answer).toEqual({ kind: 'trouble', code: 'outbox/not-understood', waitMs: null });
  });

  it.each([400, 409, 413, 422])(
    'takes %d as a judgement, with the place and the words',
    async (status) => {
      const problem = {
        type: '/problems/wrong-shape',
        title: 'Not the shape',
        errors: [{ at: 'entries.0.text', says: 'too long' }],
      };
      const { answer } = await answered(problem, status);
      const refusal = { code: 'wrong-shape', at: 'entries.0.text', says: 'too long' };
      expect(answer).toMatchObject({ kind: 'refused', refusal });
    },
  );

  it('takes a bare refusal as one too', async () => {
    const { answer } = await answered('', 422);
    expect(answer).toMatchObject({ refusal: { code: 'status-422', at: '', says: '' } });
  });

  it.each([
    [401, 'outbox/sign-in'],
    [403, 'outbox/not-allowed'],
    [404, 'outbox/server'],
    [408, 'outbox/server'],
    [429, 'outbox/busy'],
    [500, 'outbox/server'],
    [503, 'outbox/server'],
  ])('judges nothing by %d and tells of %s', async (status, code) => {
    const { answer } = await answered({}, status, { 'retry-after': '7' });
    expect(answer).toEqual({ kind: 'trouble', code, waitMs: 7000 });
  });

  it('tells no network from no answer, and gives up a request that is late', async () => {
    const world = createWorld();
    const entries = await entriesOf(world);
    const env = world.environment();
    const none = await postBatch(
      { ...env, fetch: () => Promise.reject(new TypeError('Failed to fetch')) },
      entries,
      15_000,
    );
    expect(none).toMatchObject({ code: 'outbox/no-network' });

    let signal: AbortSignal | null | undefined;
    const fetch = (_: string, init: RequestInit) => {
      signal = init.signal;
      return new Promise<Response>(() => undefined);
    };
    const late = postBatch({ ...env, fetch }, entries, 15_000);
    await quiet();
    world.clock.advance(14_999);
    expect(signal?.aborted).toBe(false);
    world.clock.advance(1);
    expect(await late).toMatchObject({ code: 'outbox/no-answer' });
    expect(signal?.aborted).toBe(true);
  });

  it('does not wait for ever for the body of an answer', async () => {
    const world = createWorld();
    const entries = await entriesOf(world);
    const body = new ReadableStream({ pull: () => new Promise<void>(() => undefined) });
    const fetch = async () => new Response(body, { status: 200 });
    const late = postBatch({ ...world.environment(), fetch }, entries, 15_000);
    await quiet();
    world.clock.advance(15_000);
    expect(await late).toMatchObject({ code: 'outbox/no-answer' });
  });
});
