import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { methods } from '@/lib/http/address';
import { problemCodes } from '@/lib/http/problem-codes';
import { refusals } from '@/lib/store/refused';
import { uuidv7 } from '@/lib/store/uuid';
import { startApi } from './api';

const api = await startApi();

/** The path of each route file, as the description writes it. */
const files = readdirSync('app/api/v1', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('route.ts'))
  .map((name) =>
    `/${name.replaceAll('\\', '/').replace(/\/route\.ts$/, '')}`.replaceAll(/\[(\w+)\]/g, '{$1}'),
  )
  .toSorted();

const { body: document } = await api.get<{
  openapi: string;
  paths: Record<
    string,
    Record<string, { responses: Record<string, { content: Record<string, unknown> }> }>
  >;
}>('/openapi.json');

describe('the description of the API', () => {
  it('is served as OpenAPI 3.1', () => {
    expect(document.openapi).toMatch(/^3\.1\./);
  });

  it('has every address there is, and no other', () => {
    expect(files.length).toBeGreaterThan(30);
    expect(Object.keys(document.paths).toSorted()).toEqual(files);
  });

  it.each(files)('has of %s the methods it takes, and no other', async (path) => {
    const taken = [];
    for (const method of methods) {
      const gone = new AbortController();
      const { status } = await fetch(api.url(path.replace('{id}', uuidv7())), {
        method,
        signal: gone.signal,
      });
      gone.abort();
      if (status !== 405) taken.push(method.toLowerCase());
    }
    expect(Object.keys(document.paths[path]!).toSorted()).toEqual(taken.toSorted());
  });

  it('has the status and the kind of each answer to a plain request', async () => {
    for (const [path, item] of Object.entries(document.paths)) {
      if (item['get'] === undefined || path === '/live') continue;
      const { status, headers } = await api.get(path.replace('{id}', uuidv7()));
      const described = item['get'].responses[status];
      expect(described, `${path} ${status}`).toBeDefined();
      expect(Object.keys(described!.content)).toContain(headers.get('content-type')!.split(';')[0]);
    }
  });
});

describe('the page at /api', () => {
  it('has every address, shape and code, and can be read without a script', async () => {
    const response = await fetch(`${api.server.url}/api`);
    expect(response.status).toBe(200);
    const page = (await response.text()).replaceAll(/<script[\s\S]*?<\/script>/g, '');
    for (const [path, item] of Object.entries(document.paths)) {
      for (const method of Object.keys(item)) {
        expect(page).toContain(`${method.toUpperCase()} /api/v1${path}`);
      }
    }
    for (const code of [...Object.keys(problemCodes), ...Object.keys(refusals)]) {
      expect(page).toContain(`<code>${code}</code>`);
    }
    const targets = [...page.matchAll(/href="#(\w+)"/g)].map(([, name]) => name!);
    expect(targets.length).toBeGreaterThan(100);
    for (const name of new Set(targets)) expect(page).toContain(`id="${name}"`);
  });
});
