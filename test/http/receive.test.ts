import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { receive } from '@/lib/http/receive';

const Shape = z.strictObject({
  name: z.string().min(2),
  inner: z.object({ n: z.int() }).optional(),
});
const seen: unknown[] = [];
const handler = receive(
  Shape,
  async (value) => {
    seen.push(value);
    return Response.json({ got: value });
  },
  { bytesMax: 1000 },
);

async function send(body: BodyInit, headers: Record<string, string> = {}) {
  const request = new Request('http://x/', {
    method: 'POST',
    body,
    headers,
    duplex: 'half',
  } as RequestInit);
  const response = await handler({ request, params: {}, query: new URLSearchParams() });
  return { status: response.status, body: (await response.json()) as Record<string, unknown> };
}

/** A body that never ends by itself; tells how much of it was asked for. */
function endless(chunk: string) {
  const taken = { bytes: 0, cancelled: false };
  const stream = new ReadableStream<Uint8Array>({
    pull(controller) {
      taken.bytes += chunk.length;
      controller.enqueue(new TextEncoder().encode(chunk));
    },
    cancel() {
      taken.cancelled = true;
    },
  });
  return { stream, taken };
}

describe('receive', () => {
  it('hands on the value its schema makes of the body', async () => {
    expect(await send('{"name":"Ruth"}')).toEqual({ status: 200, body: { got: { name: 'Ruth' } } });
  });

  it.each([
    ['nothing', ''],
    ['half of it', '{"name":"Ru'],
    ['text', 'name=Ruth'],
    ['bytes that are not UTF-8', new Uint8Array([0x22, 0xff, 0x22])],
    ['JSON and half a character', new Uint8Array([...Buffer.from('{"name":"Ruth"}'), 0xc3])],
  ])('says that %s is not JSON', async (_, body) => {
    expect(await send(body)).toMatchObject({ status: 400, body: { type: '/problems/not-json' } });
  });

  it.each([
    ['a field of another kind', '{"name":3}', 'name'],
    ['a field it does not know', '{"name":"Ruth","age":3}', ''],
    ['a field deeper down', '{"name":"Ruth","inner":{"n":1.5}}', 'inner.n'],
    ['a list', '[]', ''],
    ['null', 'null', ''],
    ['a character that cannot be kept', '{"name":"Ruth\\u0000"}', 'name'],
  ])('says where %s is wrong', async (_, body, at) => {
    const { status, body: problem } = await send(body);
    expect([status, problem['type']]).toEqual([422, '/problems/wrong-shape']);
    expect((problem['errors'] as { at: string }[])[0]!.at).toBe(at);
  });

  it('takes a body up to its bound', async () => {
    const frame = '{"name":""}'.length;
    expect((await send(`{"name":"${'x'.repeat(1000 - frame)}"}`)).status).toBe(200);
    expect((await send(`{"name":"${'x'.repeat(1001 - frame)}"}`)).status).toBe(413);
  });

  it('counts bytes, not characters', async () => {
    expect((await send(`{"name":"${'µ'.repeat(500)}"}`)).status).toBe(413);
  });

  it('stops reading a body that does not end', async () => {
    const { stream, taken } = endless('x'.repeat(300));
    const { status, body } = await send(stream);
    expect([status, body['type']]).toEqual([413, '/problems/body-too-large']);
    expect(taken.cancelled).toBe(true);
    expect(taken.bytes).toBeLessThan(3000);
  });

  it('does not begin to read a body that says it is too large', async () => {
    const { stream, taken } = endless('x');
    expect((await send(stream, { 'content-length': '1001' })).status).toBe(413);
    expect(taken.bytes).toBeLessThan(10);
  });

  it('is not upset by a body nested very deep', async () => {
    expect((await send('['.repeat(900))).status).toBe(400);
    expect((await send(`${'['.repeat(490)}${']'.repeat(490)}`)).status).toBe(422);
  });

  it('calls on nobody for what it refuses', async () => {
    const before = seen.length;
    await send('{"name":""}');
    await send('nothing');
    expect(seen.length).toBe(before);
  });
});
