import { Agent, request } from 'node:http';

/**
 * Asks one address again and again from so many clients at once, each on a connection of its own that stays
 * open. What is sent is made beforehand.
 *
 * @returns ms for one request: from one client how long it takes, from several the inverse of their common rate
 */
export async function apiLoad(
  url: string,
  clients: number,
  count: number,
  bodyOf?: () => unknown,
): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: clients });
  const bodies = Array.from({ length: count }, () => bodyOf && JSON.stringify(bodyOf()));
  const begun = performance.now();
  await Promise.all(
    Array.from({ length: clients }, async () => {
      while (bodies.length > 0) await ask(agent, url, bodies.pop());
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
