import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { request, type IncomingMessage } from 'node:http';
import { expect, it, onTestFinished } from 'vitest';
import { freshDatabase } from '../../setup/fresh-database';
import { startServer, type RunningServer } from '../../setup/start-server.mjs';

const device = randomUUID();

async function ownServer(): Promise<RunningServer> {
  const server = await startServer({ databaseUrl: await freshDatabase() });
  onTestFinished(() => server.remove());
  return server;
}

/** A request that will add a person to the notebook, not yet sent. */
function adding(server: RunningServer, id: string, headers: Record<string, string> = {}) {
  const body = JSON.stringify({ id, name: 'Ann' });
  const asked = request(`${server.url}/api/v1/people`, {
    method: 'POST',
    agent: false,
    headers: {
      'content-type': 'application/json',
      'content-length': String(body.length),
      origin: server.url,
      'fitwright-device': device,
      ...headers,
    },
  });
  const answer = once(asked, 'response').then(([response]) => response as IncomingMessage);
  return { asked, body, answer };
}

async function people(server: RunningServer): Promise<string[]> {
  const response = await fetch(`${server.url}/api/v1/people`);
  const { rows } = (await response.json()) as { rows: { id: string }[] };
  return rows.map(({ id }) => id);
}

it('finishes a write that is half received when it is told to stop', async () => {
  const server = await ownServer();
  const id = randomUUID();
  const { asked, body, answer } = adding(server, id, { expect: '100-continue' });
  asked.flushHeaders();
  await once(asked, 'continue');
  asked.write(body.slice(0, 10));
  const stopped = server.stop();
  while (!server.output().includes('Stopping')) await wait(10);
  asked.end(body.slice(10));
  expect((await answer).statusCode).toBe(201);
  expect(await stopped).toBe(0);
  await server.restart();
  expect(await people(server)).toEqual([id]);
});

it('ends the stream of changes whole when it is told to stop, without waiting for the reader', async () => {
  const server = await ownServer();
  const stream = await fetch(`${server.url}/api/v1/live`);
  expect(stream.headers.get('content-type')).toMatch(/^text\/event-stream/);
  const begun = Date.now();
  expect(await server.stop()).toBe(0);
  await stream.text(); // rejects if the stream was torn off
  // Far less than the fifteen seconds after which an answer is given up.
  expect(Date.now() - begun).toBeLessThan(8000);
});

it('has after every kill each change that it had acknowledged before', async () => {
  const server = await ownServer();
  const acknowledged: string[] = [];
  for (const afterMs of [0, 3, 20]) {
    const over = new AbortController();
    const writer = async () => {
      while (!over.signal.aborted) {
        const id = randomUUID();
        const { asked, body, answer } = adding(server, id);
        asked.end(body);
        const response = await answer.catch(() => undefined);
        if (response?.statusCode === 201) acknowledged.push(id);
      }
    };
    const writers = [writer(), writer(), writer()];
    const enough = acknowledged.length + 10;
    while (acknowledged.length < enough) await wait(5);
    await wait(afterMs);
    await server.kill();
    over.abort();
    await Promise.all(writers);
    await server.restart();
    expect(await people(server)).toEqual(expect.arrayContaining(acknowledged));
  }
});

function wait(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}
