import { Agent, request } from 'node:http';

const clients = 8;

/**
 * Asks one address again and again from eight clients at once, each on a connection of its own.
 *
 * @returns ms a request, over all clients together: the inverse of requests a millisecond
 */
export async function apiLoad(url: string, count: number, bodyOf?: () => unknown): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const bodies = Array.from({ length: count }, () =>
    bodyOf ? JSON.stringify(bodyOf()) : undefined,
  );
  const begun = performance.now();
  await Promise.all(
    Array.from({ length: clients }, async () => {
      for (let body = bodies.pop(); bodies.length > 0; body = bodies.pop())
        await ask(agent, url, body);
    }),
  );
  const each = (performance.now() - begun) / count;
  agent.destroy();
  return each;
}

function ask(agent: Agent, url: string, body: string | undefined): Promise<void> {
  const headers = { origin: new URL(url).origin, 'content-type': 'application/json' };
  return new Promise((resolve, reject) => {
    const asked = request(url, { agent, method: body ? 'POST' : 'GET', headers }, (response) => {
      if (response.statusCode !== 200) reject(new Error(`${url} answered ${response.statusCode}`));
      response.resume().on('end', resolve);
    });
    asked.on('error', reject);
    asked.end(body);
  });
}
