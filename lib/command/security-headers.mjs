import { createHash, randomBytes } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Makes the function that gives each answer its security headers.
 *
 * Next 16 puts small scripts into the page itself (the page's data, and the order in which streamed
 * parts are shown), tried on a production build: without leave for them nothing on the page works.
 * They get that leave one by one, so `unsafe-inline` is not needed for scripts. A page made for the
 * request takes a nonce, which Next reads from the request's own policy header; a page made at build
 * time cannot, so the hashes of its scripts are read from the build. Limit: a page that Next makes
 * anew between builds (`revalidate`) would fall between the two; there is none.
 *
 * Styles keep `unsafe-inline`: a `style` attribute in the page can be neither hashed nor given a
 * nonce, and a style runs no program. The development server compiles in the browser and needs
 * `unsafe-inline` and `unsafe-eval`.
 *
 * An answer that has a policy of its own (a picture, which may only be looked at) keeps it.
 *
 * @param {{ dev: boolean, next: string }} options `next`: the folder of the build
 * @returns {(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse) => void}
 *   called before Next handles the request
 */
export function securityHeaders({ dev, next }) {
  const hashes = dev ? [] : scriptHashes(join(next, 'server', 'app'));
  return (request, response) => {
    const nonce = randomBytes(16).toString('base64');
    const scripts = dev ? `'unsafe-inline' 'unsafe-eval'` : `'nonce-${nonce}'`;
    if (!dev) request.headers['content-security-policy'] = `script-src ${scripts}`;
    for (const [name, text] of Object.entries(fixed)) response.setHeader(name, text);
    const writeHead = response.writeHead;
    response.writeHead = (...head) => {
      if (!response.hasHeader('Content-Security-Policy')) {
        const isMadeAtBuild = response.hasHeader('x-nextjs-prerender');
        const leave = isMadeAtBuild ? hashes.join(' ') : scripts;
        response.setHeader('Content-Security-Policy', policy(leave));
      }
      return writeHead.apply(response, head);
    };
  };
}

const fixed = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
};

function policy(scripts) {
  return [
    `default-src 'self'`,
    `script-src 'self' ${scripts}`.trim(),
    `style-src 'self' 'unsafe-inline'`,
    `img-src 'self' data: blob:`,
    `object-src 'none'`,
    `base-uri 'none'`,
    `form-action 'self'`,
    `frame-ancestors 'none'`,
  ].join('; ');
}

function scriptHashes(folder) {
  if (!existsSync(folder)) return [];
  const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const scripts = pages
    .filter((name) => name.endsWith('.html'))
    .flatMap((name) => inlineScripts(readFileSync(join(folder, name), 'utf8')));
  return [...new Set(scripts.map(hash))];
}

function inlineScripts(html) {
  const found = html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g);
  return [...found].map(([, text]) => text);
}

function hash(text) {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}
