import { once } from 'node:events';
import { createServer, type RequestListener } from 'node:http';
import { connect, type AddressInfo } from 'node:net';
import { describe, expect, it } from 'vitest';
import { stopCleanly } from '@/lib/command/stop-cleanly.mjs';

async function serving(answer: RequestListener) {
  const server = createServer();
  const { follow, stop } = stopCleanly(server);
  server.on('request', (request, response) => {
    follow(response);
    void answer(request, response);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  return { url: `http://127.0.0.1:${port}/`, port, server, stop };
}

const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));

describe('stopCleanly', () => {
  it('answers what is under way before it is done, and takes nothing new', async () => {
    let isWritten = false;
    const { url, server, stop } = await serving(async (_, response) => {
      await wait(300);
      isWritten = true;
      response.end('kept');
    });
    const answer = fetch(url).then((response) => response.text());
    await once(server, 'request');
    const stopped = stop();
    await expect(fetch(url)).rejects.toThrow();
    await stopped;
    expect(isWritten).toBe(true);
    expect(await answer).toBe('kept');
  });

  it('waits for a request whose body is still arriving', async () => {
    const { port, server, stop } = await serving(async (request, response) => {
      let size = 0;
      for await (const chunk of request) size += (chunk as Buffer).length;
      response.end(`got ${size}`);
    });
    const socket = connect(port, '127.0.0.1');
    let heard = '';
    socket.on('data', (bytes) => (heard += bytes.toString()));
    socket.write('POST / HTTP/1.1\r\nHost: localhost\r\nContent-Length: 6\r\n\r\nabc');
    await once(server, 'request');
    const closed = once(socket, 'close');
    const stopped = stop();
    await wait(100);
    socket.write('def');
    await stopped;
    await closed;
    expect(heard).toContain('got 6');
    expect(heard).toMatch(/connection: close/i);
  });

  it('ends a stream of events whole, at once, and one that begins while it stops', async () => {
    const { url, server, stop } = await serving(async (request, response) => {
      if (request.method === 'POST') await wait(200);
      response.setHeader('content-type', 'text/event-stream');
      response.write('data: hello\n\n');
    });
    const early = await fetch(url);
    const late = fetch(url, { method: 'POST' });
    await once(server, 'request');
    const begun = Date.now();
    await stop();
    expect(Date.now() - begun).toBeLessThan(2000);
    expect(await early.text()).toBe('data: hello\n\n');
    expect(await (await late).text()).toBe('data: hello\n\n');
  });

  it('is not held up by a connection kept open for later', async () => {
    const { url, stop } = await serving((_, response) => void response.end('ok'));
    await (await fetch(url)).text();
    const begun = Date.now();
    await stop();
    expect(Date.now() - begun).toBeLessThan(1000);
  });

  it('is not held up by an upgraded connection', async () => {
    const { port, server, stop } = await serving(() => {});
    server.on(
      'upgrade',
      (_, socket) => void socket.write('HTTP/1.1 101 Switching Protocols\r\n\r\n'),
    );
    const socket = connect(port, '127.0.0.1');
    socket.on('error', () => {});
    socket.write('GET / HTTP/1.1\r\nHost: localhost\r\nConnection: upgrade\r\nUpgrade: x\r\n\r\n');
    await once(socket, 'data');
    const begun = Date.now();
    await stop();
    expect(Date.now() - begun).toBeLessThan(1000);
  });
});
