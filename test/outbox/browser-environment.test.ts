import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { PageEvent } from '@/lib/outbox/environment';

/** As much of a page as the environment touches: there is no browser here. */
async function page(protocol: string, more: Record<string, unknown> = {}) {
  const jar = new Map<string, string>();
  const written: string[] = [];
  const document = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  Object.defineProperty(document, 'cookie', {
    get: () => [...jar].map(([name, value]) => `${name}=${value}`).join('; '),
    set: (text: string) => {
      written.push(text);
      const [pair] = text.split('; ');
      jar.set(pair!.split('=')[0]!, pair!.split('=')[1]!);
    },
  });
  const words = new Map<string, string>();
  const listeners = new EventTarget();
  vi.stubGlobal('document', document);
  vi.stubGlobal('location', { protocol });
  vi.stubGlobal('navigator', {});
  vi.stubGlobal('localStorage', {
    getItem: (name: string) => words.get(name) ?? null,
    setItem: (name: string, value: string) => words.set(name, value),
  });
  vi.stubGlobal('addEventListener', listeners.addEventListener.bind(listeners));
  for (const [name, value] of Object.entries(more)) vi.stubGlobal(name, value);
  vi.resetModules();
  const { browserEnvironment } = await import('@/lib/outbox/browser-environment');
  const env = browserEnvironment();
  return { env, written, jar, words, document, listeners };
}

function forbidden(): never {
  throw new DOMException('denied', 'SecurityError');
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('the browser as the outbox sees it', () => {
  it('remembers in a cookie for 400 days, for this site only, and in local storage', async () => {
    const { env, written, words, jar } = await page('http:');
    jar.set('other', 'x');
    env.keepsakes.forEach((keepsake) => keepsake.write('fw-device', 'abc'));
    expect(written).toEqual(['fw-device=abc; Path=/; Max-Age=34560000; SameSite=Lax']);
    expect(words.get('fw-device')).toBe('abc');
    expect(env.keepsakes.map(({ read }) => read('fw-device'))).toEqual(['abc', 'abc']);
    expect(env.keepsakes.map(({ read }) => read('fw'))).toEqual([null, null]);
  });

  it('marks the cookie secure on https, where it would be dropped on plain http', async () => {
    const { env, written } = await page('https:');
    env.keepsakes.forEach((keepsake) => keepsake.write('fw-device', 'abc'));
    expect(written[0]).toMatch(/; Secure$/);
  });

  it('does not fail where local storage is forbidden or full', async () => {
    const localStorage = { getItem: forbidden, setItem: forbidden };
    const { env } = await page('http:', { localStorage });
    env.keepsakes.forEach((keepsake) => keepsake.write('fw-device', 'abc'));
    expect(env.keepsakes.map(({ read }) => read('fw-device'))).toEqual([null, 'abc']);
  });

  it('does without locks, channel and persistence on a plain http page', async () => {
    const { env } = await page('http:', { BroadcastChannel: undefined });
    expect([env.locks, env.channel]).toEqual([null, null]);
    expect(() => env.persist()).not.toThrow();
  });

  it('tells of the page being seen, hidden, back from the cache and back on the network', async () => {
    const { env, document, listeners } = await page('http:');
    const heard: PageEvent[] = [];
    const stop = env.onPage((event) => heard.push(event));
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    document.visibilityState = 'visible';
    document.dispatchEvent(new Event('visibilitychange'));
    listeners.dispatchEvent(Object.assign(new Event('pageshow'), { persisted: true }));
    listeners.dispatchEvent(Object.assign(new Event('pageshow'), { persisted: false }));
    listeners.dispatchEvent(new Event('online'));
    expect(heard).toEqual(['hidden', 'visible', 'visible', 'online']);
    stop();
    listeners.dispatchEvent(new Event('online'));
    expect(heard).toHaveLength(4);
  });

  it('brings no zod into the page', () => {
    const folder = new URL('../../lib/outbox/', import.meta.url);
    const imports = readdirSync(folder).flatMap((name) =>
      [...readFileSync(new URL(name, folder), 'utf8').matchAll(/^import (?!type ).*$/gm)].map(
        ([line]) => line,
      ),
    );
    expect(imports.length).toBeGreaterThan(20);
    expect(imports.filter((line) => /zod|lib\/schema/.test(line))).toEqual([]);
  });
});
