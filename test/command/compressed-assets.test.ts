import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request, type IncomingHttpHeaders } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { describe, expect, it, onTestFinished } from 'vitest';
import { compressAssets, compressedFolder } from '@/lib/command/compress-assets.mjs';
import { compressedAssets } from '@/lib/command/compressed-assets.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

const script = `/* ${'a script that says the same again and again; '.repeat(200)} */`;

function aBuild(files: Record<string, string> = { 'chunks/a1.js': script }): string {
  const next = temporaryFolder();
  for (const [name, text] of Object.entries(files)) put(next, name, text);
  return next;
}

function put(next: string, name: string, text: string): void {
  const file = join(next, 'static', name);
  mkdirSync(join(file, '..'), { recursive: true });
  writeFileSync(file, text);
}

type Answer = { status: number; headers: IncomingHttpHeaders; body: Buffer };

/** Asks a server that sends what is compressed, and the plain words "as it is" where that leaves it to others. */
async function ask(
  next: string,
  path: string,
  headers: Record<string, string>,
  method = 'GET',
): Promise<Answer> {
  const compressed = compressedAssets({ next });
  const server = createServer((asked, response) => {
    if (!compressed(asked, response)) response.end('as it is');
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  onTestFinished(() => void server.close());
  const { port } = server.address() as AddressInfo;
  return new Promise((done, fail) => {
    const asked = request({ port, path, method, headers, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => parts.push(part));
      response.on('end', () =>
        done({
          status: response.statusCode!,
          headers: response.headers,
          body: Buffer.concat(parts),
        }),
      );
    });
    asked.on('error', fail);
    asked.end();
  });
}

const path = '/_next/static/chunks/a1.js';

describe('compressedAssets', () => {
  it('sends brotli to a browser that takes it', async () => {
    const next = aBuild();
    compressAssets(next);
    const { status, headers, body } = await ask(next, path, {
      'accept-encoding': 'gzip, deflate, br, zstd',
    });
    expect(status).toBe(200);
    expect(headers).toMatchObject({
      'content-encoding': 'br',
      'content-type': 'application/javascript; charset=UTF-8',
      'content-length': String(body.length),
      'cache-control': 'public, max-age=31536000, immutable',
      vary: 'Accept-Encoding',
    });
    expect(body.length).toBeLessThan(script.length / 10);
    expect(brotliDecompressSync(body).toString()).toBe(script);
  });

  it.each(['gzip', 'gzip, br;q=0', 'deflate, gzip;q=0.5'])('sends gzip to %s', async (accepted) => {
    const next = aBuild();
    compressAssets(next);
    const { headers, body } = await ask(next, path, { 'accept-encoding': accepted });
    expect(headers['content-encoding']).toBe('gzip');
    expect(gunzipSync(body).toString()).toBe(script);
  });

  it.each([
    ['a client that takes neither', { 'accept-encoding': 'identity' }],
    ['one that refuses both', { 'accept-encoding': 'br;q=0, gzip;q=0, *' }],
    ['one that says nothing', {}],
    ['one that wants a part', { 'accept-encoding': 'br', range: 'bytes=0-9' }],
  ])('leaves the file itself to %s, and says what that depended on', async (_, headers) => {
    const next = aBuild();
    compressAssets(next);
    const answer = await ask(next, path, headers);
    expect(answer.body.toString()).toBe('as it is');
    expect(answer.headers.vary).toBe('Accept-Encoding');
    expect(answer.headers['content-encoding']).toBeUndefined();
  });

  it('answers a question for the head without a body', async () => {
    const next = aBuild();
    compressAssets(next);
    const { headers, body } = await ask(next, path, { 'accept-encoding': 'br' }, 'HEAD');
    expect(headers['content-encoding']).toBe('br');
    expect(body).toHaveLength(0);
  });

  it.each([
    '/_next/static/chunks/unknown.js',
    '/_next/static/../cache/secret.js',
    '/_next/static/%2e%2e/secret.js',
    '/_next/static/chunks/face.woff2',
    '/jobs',
  ])('has no answer to %s', async (asked) => {
    const next = aBuild({ 'chunks/a1.js': script, 'chunks/face.woff2': script });
    put(next, '../cache/secret.js', 'secret');
    compressAssets(next);
    const answer = await ask(next, asked, { 'accept-encoding': 'br' });
    expect(answer.body.toString()).toBe('as it is');
  });

  it('leaves all to others where a build compressed nothing', async () => {
    const answer = await ask(aBuild(), path, { 'accept-encoding': 'br' });
    expect(answer.body.toString()).toBe('as it is');
  });
});

describe('compressAssets', () => {
  it('takes what is there for right only where it says the same', () => {
    const next = aBuild({ 'chunks/a1.js': script, 'chunks/b2.css': 'b { color: red }' });
    compressAssets(next);
    const a1 = join(compressedFolder(next), 'chunks/a1.js.br');
    put(next, 'chunks/a1.js', 'another text');
    writeFileSync(join(compressedFolder(next), 'chunks/b2.css.gz'), 'cut sho');
    compressAssets(next);
    expect(brotliDecompressSync(readFileSync(a1)).toString()).toBe('another text');
    const b2 = readFileSync(join(compressedFolder(next), 'chunks/b2.css.gz'));
    expect(gunzipSync(b2).toString()).toBe('b { color: red }');
  });

  it('drops what belongs to no file any more', () => {
    const next = aBuild();
    compressAssets(next);
    rmSync(join(next, 'static/chunks/a1.js'));
    compressAssets(next);
    expect(existsSync(join(compressedFolder(next), 'chunks/a1.js.br'))).toBe(false);
  });
});
