import { request as httpRequest } from 'node:http';
import { afterAll } from 'vitest';
import { uuidv7 } from '@/lib/store/uuid';
import { freshDatabase } from '../setup/fresh-database';
import { startServer, type RunningServer } from '../setup/start-server.mjs';

export type Answer<Body = Record<string, unknown>> = {
  status: number;
  headers: Headers;
  body: Body;
};

/** A running server with an empty notebook of its own, and short ways to ask it. */
export async function startApi(databaseUrl?: string) {
  const server: RunningServer = await startServer({
    databaseUrl: databaseUrl ?? (await freshDatabase()),
  });
  afterAll(() => server.remove());
  const deviceId = uuidv7();
  const url = (path: string) => `${server.url}/api/v1${path}`;
  const headers = {
    origin: server.url,
    'content-type': 'application/json',
    'fitwright-device': deviceId,
  };

  async function ask<Body = Record<string, unknown>>(
    method: string,
    path: string,
    body?: unknown,
    more: Record<string, string> = {},
  ): Promise<Answer<Body>> {
    const response = await fetch(url(path), {
      method,
      headers: body === undefined ? more : { ...headers, ...more },
      ...(body === undefined
        ? {}
        : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    const isJson = /json/.test(response.headers.get('content-type') ?? '');
    return {
      status: response.status,
      headers: response.headers,
      body: (isJson ? JSON.parse(text) : text) as Body,
    };
  }

  return {
    server,
    deviceId,
    url,
    headers,
    get: <Body = Record<string, unknown>>(path: string) => ask<Body>('GET', path),
    post: <Body = Record<string, unknown>>(path: string, body: unknown, more = {}) =>
      ask<Body>('POST', path, body, more),
    patch: <Body = Record<string, unknown>>(path: string, body: unknown, more = {}) =>
      ask<Body>('PATCH', path, body, more),
  };
}

/** A request exactly as written: any header, also those a browser or `fetch` keeps to itself. */
export function rawRequest(
  url: string,
  {
    method = 'GET',
    headers = {},
    body,
  }: { method?: string; headers?: Record<string, string>; body?: string },
): Promise<{ status: number; headers: Record<string, unknown>; text: string }> {
  return new Promise((resolve, reject) => {
    const request = httpRequest(url, { method, headers }, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode!, headers: response.headers, text }),
      );
    });
    request.on('error', reject);
    request.end(body);
  });
}

/** The code of a problem, checked to be one. */
export function codeOf({ headers, body, status }: Answer): string {
  const type = headers.get('content-type');
  const { type: name, title, errors } = body;
  const isProblem =
    type === 'application/problem+json' &&
    body['status'] === status &&
    typeof title === 'string' &&
    Array.isArray(errors) &&
    /^\/problems\/[a-z-]+$/.test(String(name));
  return isProblem
    ? String(name).slice('/problems/'.length)
    : `no problem: ${JSON.stringify(body)}`;
}
