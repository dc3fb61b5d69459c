import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { securityHeaders } from '@/lib/command/security-headers.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

type Answer = (request: IncomingMessage, response: ServerResponse) => void;

async function policyOf(options: { dev: boolean; next: string }, answer: Answer) {
  const secure = securityHeaders(options);
  const server = createServer((request, response) => {
    secure(request, response);
    answer(request, response);
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  onTestFinished(() => void server.close());
  const response = await fetch(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
  return {
    headers: response.headers,
    body: await response.text(),
    scripts: /script-src ([^;]*);/.exec(response.headers.get('content-security-policy')!)![1]!,
  };
}

/** Answers with the policy that Next would read its nonce from. */
const made: Answer = (request, response) =>
  void response.end(request.headers['content-security-policy']);
const prerendered: Answer = (_, response) => {
  response.setHeader('x-nextjs-prerender', '1');
  response.end();
};

function buildWith(html: string): string {
  const next = temporaryFolder();
  mkdirSync(join(next, 'server/app/jobs'), { recursive: true });
  writeFileSync(join(next, 'server/app/jobs/page.html'), html);
  return next;
}

const sha = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

describe('securityHeaders', () => {
  it('gives a page made for the request a nonce of its own, and tells Next the same one', async () => {
    const options = { dev: false, next: temporaryFolder() };
    const first = await policyOf(options, made);
    const second = await policyOf(options, made);
    expect(first.scripts).toMatch(/^'self' 'nonce-[A-Za-z0-9+/]{22}=='$/);
    expect(first.body).toBe(`script-src ${first.scripts.replace("'self' ", '')}`);
    expect(second.scripts).not.toBe(first.scripts);
  });

  it('gives a page made at build time the hashes of its own scripts, and no nonce', async () => {
    const next = buildWith(
      '<script src="/a.js" async=""></script><script>one()</script><script id="_R_">two()\n</script>',
    );
    const { scripts } = await policyOf({ dev: false, next }, prerendered);
    expect(scripts).toBe(`'self' ${sha('one()')} ${sha('two()\n')}`);
  });

  it('allows no inline script and no evaluated text outside development', async () => {
    const next = buildWith('<script>one()</script>');
    for (const answer of [made, prerendered]) {
      const { scripts } = await policyOf({ dev: false, next }, answer);
      expect(scripts).not.toMatch(/unsafe/);
    }
    const { scripts } = await policyOf({ dev: true, next }, made);
    expect(scripts).toBe(`'self' 'unsafe-inline' 'unsafe-eval'`);
  });

  it('forbids frames, guessing of types, referrers and other origins', async () => {
    const { headers } = await policyOf({ dev: false, next: temporaryFolder() }, made);
    const policy = headers.get('content-security-policy')!.split('; ');
    expect(policy).toEqual(
      expect.arrayContaining([
        `default-src 'self'`,
        `frame-ancestors 'none'`,
        `object-src 'none'`,
        `base-uri 'none'`,
      ]),
    );
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('same-origin');
    expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
  });

  it('also covers an answer written with an explicit head', async () => {
    const { scripts } = await policyOf({ dev: false, next: temporaryFolder() }, (_, response) => {
      response.writeHead(200, { 'content-type': 'text/html' });
      response.end();
    });
    expect(scripts).toMatch(/^'self' 'nonce-/);
  });
});
