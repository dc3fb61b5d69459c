import { readFileSync } from 'node:fs';
import { runInNewContext } from 'node:vm';
import { beforeEach, expect, it, vi } from 'vitest';

// The worker as it is served, in a world of its own: caches, a network that can be cut, and its events.

const origin = 'http://127.0.0.1:4180';
type Handler = (event: Record<string, unknown>) => void;

let network: (url: string) => Promise<string>;
let stores: Map<string, Map<string, string>>;

function workerOf(build: { id: string; assets: string[] }) {
  const handlers: Record<string, Handler> = {};
  const skipWaiting = vi.fn();
  const urlOf = (asked: string | { url: string }) =>
    new URL(typeof asked === 'string' ? asked : asked.url, origin).pathname;
  const cacheOf = (name: string) => {
    const held = stores.get(name) ?? new Map<string, string>();
    stores.set(name, held);
    return {
      async addAll(list: (string | { url: string })[]) {
        const got = await Promise.all(
          list.map(async (one) => [urlOf(one), await network(urlOf(one))] as const),
        );
        for (const [url, body] of got) held.set(url, body);
      },
      match: async (asked: string | { url: string }) => held.get(urlOf(asked)),
    };
  };
  const world = {
    build,
    URL,
    setTimeout,
    clearTimeout,
    Request: class {
      constructor(readonly url: string) {}
    },
    self: {
      location: { origin },
      addEventListener: (type: string, handler: Handler) => (handlers[type] = handler),
      skipWaiting,
    },
    caches: {
      open: async (name: string) => cacheOf(name),
      keys: async () => [...stores.keys()],
      delete: async (name: string) => stores.delete(name),
      match: async (asked: { url: string }) =>
        [...stores.values()].map((held) => held.get(urlOf(asked))).find((one) => one !== undefined),
    },
    fetch: (request: { url: string }) => network(urlOf(request)),
  };
  runInNewContext(readFileSync('lib/worker/sw.js', 'utf8'), world);
  const wait = (type: string, more: Record<string, unknown> = {}) => {
    let until: Promise<unknown> = Promise.resolve();
    handlers[type]!({ waitUntil: (work: Promise<unknown>) => (until = work), ...more });
    return until;
  };
  /** What it answers; undefined where it leaves the request to the browser. */
  const ask = (path: string, more: Record<string, unknown> = {}) => {
    let answer: Promise<unknown> | undefined;
    const request = { url: new URL(path, origin).href, method: 'GET', mode: 'cors', ...more };
    handlers['fetch']!({ request, respondWith: (given: Promise<unknown>) => (answer = given) });
    return answer;
  };
  return { wait, ask, skipWaiting };
}

const cut = () => Promise.reject(new TypeError('Failed to fetch'));
const navigate = { mode: 'navigate' };

beforeEach(() => {
  stores = new Map();
  network = async (url) => `${url} from the network`;
});

it('keeps the shell and every asset of its build, or is not installed at all', async () => {
  const worker = workerOf({ id: 'one', assets: ['/_next/static/a.js', '/_next/static/b.css'] });
  await worker.wait('install');
  expect([...stores.get('fitwright-one')!.keys()]).toEqual([
    '/here',
    '/_next/static/a.js',
    '/_next/static/b.css',
  ]);
  network = (url) => (url.endsWith('.css') ? cut() : Promise.resolve(url));
  await expect(
    workerOf({ id: 'two', assets: ['/_next/static/b.css'] }).wait('install'),
  ).rejects.toThrow('Failed to fetch');
});

it('opens pages from the network while there is one, and from the device when it is cut', async () => {
  const worker = workerOf({ id: 'one', assets: [] });
  await worker.wait('install');
  expect(await worker.ask('/jobs/1/bench', navigate)).toBe('/jobs/1/bench from the network');
  network = cut;
  expect(await worker.ask('/jobs/1/bench?piece=2', navigate)).toBe('/here from the network');
});

it('does not wait for ever for a network that says nothing', async () => {
  vi.useFakeTimers();
  const worker = workerOf({ id: 'one', assets: [] });
  await worker.wait('install');
  network = () => new Promise(() => {});
  const answer = worker.ask('/', navigate);
  await vi.advanceTimersByTimeAsync(5000);
  expect(await answer).toBe('/here from the network');
  vi.useRealTimers();
});

it('takes assets from the device, of whichever build they are, and others from the network', async () => {
  await workerOf({ id: 'one', assets: ['/_next/static/a.js'] }).wait('install');
  const worker = workerOf({ id: 'two', assets: ['/_next/static/b.js'] });
  await worker.wait('install');
  network = async () => 'asked for';
  expect(await worker.ask('/_next/static/a.js')).toBe('/_next/static/a.js from the network');
  expect(await worker.ask('/_next/static/c.js')).toBe('asked for');
});

it('leaves writes, the API and other addresses alone', async () => {
  const worker = workerOf({ id: 'one', assets: [] });
  expect(worker.ask('/api/v1/readings', { method: 'POST' })).toBeUndefined();
  expect(worker.ask('/api/v1/live?job=1')).toBeUndefined();
  expect(worker.ask('http://elsewhere.example/', navigate)).toBeUndefined();
});

it('keeps the build before it and drops older ones', async () => {
  for (const id of ['one', 'two', 'three']) {
    const worker = workerOf({ id, assets: [] });
    await worker.wait('install');
    await worker.wait('activate');
  }
  stores.set('of somebody else', new Map());
  expect([...stores.keys()]).toEqual(['fitwright-two', 'fitwright-three', 'of somebody else']);
});

it('never takes over by itself, only when a person has asked', async () => {
  const worker = workerOf({ id: 'one', assets: [] });
  await worker.wait('install');
  worker.wait('message', { data: 'something else' });
  expect(worker.skipWaiting).not.toHaveBeenCalled();
  worker.wait('message', { data: 'load it' });
  expect(worker.skipWaiting).toHaveBeenCalledOnce();
});
