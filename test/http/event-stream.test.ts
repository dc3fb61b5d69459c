import { afterEach, describe, expect, it, vi } from 'vitest';
import { eventStream } from '@/lib/http/event-stream';

afterEach(() => vi.useRealTimers());

type Send = Parameters<Parameters<typeof eventStream>[1]>[0];

async function open(request = new Request('http://x/')) {
  let send!: Send;
  const stop = vi.fn();
  const response = await eventStream(request, async (given) => {
    send = given;
    return stop;
  });
  const reader = response.body?.getReader();
  const read = async () => new TextDecoder().decode((await reader!.read()).value);
  return { response, reader: reader!, read, send, stop };
}

describe('eventStream', () => {
  it('says at once when to come back and that it is heard', async () => {
    const { response, read } = await open();
    expect(response.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('no-store, no-transform');
    expect(await read()).toBe('retry: 2000\nevent: beat\ndata: {}\n\n');
  });

  it('sends each event with its number as id, on lines of its own', async () => {
    const { read, send } = await open();
    await read();
    void send([{ seq: 7, text: 'a\nb' } as { seq: number }, { seq: 9 }]);
    expect(await read()).toBe(
      'id: 7\ndata: {"seq":7,"text":"a\\nb"}\n\nid: 9\ndata: {"seq":9}\n\n',
    );
  });

  it('beats every fifteen seconds', async () => {
    vi.useFakeTimers();
    const { read } = await open();
    await read();
    vi.advanceTimersByTime(15_000);
    expect(await read()).toBe('event: beat\ndata: {}\n\n');
  });

  it('lets the sender wait while the reader does not read', async () => {
    const { send, read } = await open();
    let sent = false;
    const sending = send([{ seq: 1, text: 'x'.repeat(100_000) } as { seq: number }]).then(() => {
      sent = true;
    });
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(sent).toBe(false);
    await read();
    await read();
    await sending;
    expect(sent).toBe(true);
  });

  it.each([
    ['cancels', (reader: ReadableStreamDefaultReader) => reader.cancel()],
    ['reads', async () => {}],
  ])(
    'stops following when the reader %s and goes away, and takes more without harm',
    async (_, leave) => {
      const gone = new AbortController();
      const { reader, send, stop } = await open(new Request('http://x/', { signal: gone.signal }));
      const waiting = send([{ seq: 1, text: 'x'.repeat(100_000) } as { seq: number }]);
      await leave(reader);
      gone.abort();
      expect(stop).toHaveBeenCalledOnce();
      await waiting;
      await send([{ seq: 2 }]);
      expect(stop).toHaveBeenCalledOnce();
    },
  );

  it('is no stream when there is nothing to follow', async () => {
    vi.useFakeTimers();
    const failing = eventStream(new Request('http://x/'), () => Promise.reject(new Error('away')));
    await expect(failing).rejects.toThrow('away');
    expect(vi.getTimerCount()).toBe(0);
  });

  it('answers HEAD without a stream', async () => {
    const follow = vi.fn();
    const response = await eventStream(new Request('http://x/', { method: 'HEAD' }), follow);
    expect([response.body, follow.mock.calls.length]).toEqual([null, 0]);
  });
});
