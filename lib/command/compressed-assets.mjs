import { readdirSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { codings, compressedFolder } from './compress-assets.mjs';

const prefix = '/_next/static/';
const kinds = {
  js: 'application/javascript; charset=UTF-8',
  css: 'text/css; charset=UTF-8',
  svg: 'image/svg+xml',
  json: 'application/json; charset=UTF-8',
};

/**
 * Makes the function that answers with a script or style compressed at build time, as the request allows: brotli,
 * else gzip. Where neither is allowed, or nothing was compressed, it answers nothing and the file itself is sent
 * by whoever comes next; that answer is marked as depending on the header too.
 *
 * The names are listed once, so no path can lead anywhere else.
 *
 * @param {{ next: string }} options `next`: the folder of the build
 * @returns {(request: import('node:http').IncomingMessage, response: import('node:http').ServerResponse) => boolean}
 *   true where it has answered, or is about to
 */
export function compressedAssets({ next }) {
  const folder = compressedFolder(next);
  const known = new Set(filesIn(folder));
  return (request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') return false;
    const [path] = (request.url ?? '').split('?');
    if (!path.startsWith(prefix)) return false;
    const name = path.slice(prefix.length);
    const kind = kinds[name.slice(name.lastIndexOf('.') + 1)];
    if (kind === undefined) return false;
    response.setHeader('Vary', 'Accept-Encoding');
    // A part of a file is a part of the file itself.
    if (request.headers.range !== undefined) return false;
    const coding = Object.keys(codings).find(
      (one) =>
        isAccepted(request.headers['accept-encoding'], one) && known.has(name + codings[one].end),
    );
    if (coding === undefined) return false;
    void send(request, response, { file: join(folder, name + codings[coding].end), kind, coding });
    return true;
  };
}

async function send(request, response, { file, kind, coding }) {
  try {
    const body = await readFile(file);
    response.writeHead(200, {
      'Content-Type': kind,
      'Content-Encoding': coding,
      'Content-Length': body.length,
      'Cache-Control': 'public, max-age=31536000, immutable',
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  } catch (error) {
    console.error(error);
    response.destroy();
  }
}

/** Named with a weight above nothing, or meant by a star where it is not named (RFC 9110, 12.5.3). */
function isAccepted(header, coding) {
  const weights = new Map(
    String(header ?? '')
      .split(',')
      .map((part) => {
        const [word, ...parameters] = part.split(';').map((one) => one.trim().toLowerCase());
        const weight = parameters.find((one) => one.startsWith('q='));
        return [word, weight === undefined ? 1 : Number(weight.slice(2))];
      }),
  );
  return (weights.get(coding) ?? weights.get('*') ?? 0) > 0;
}

function filesIn(folder) {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => statSync(join(folder, name)).isFile())
      .map((name) => name.replaceAll('\\', '/'));
  } catch {
    return []; // A build of an earlier version: nothing was compressed.
  }
}
