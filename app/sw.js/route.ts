import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

export const dynamic = 'force-dynamic';

/** The service worker with the list of what it keeps; another build makes it another text, which is an update. */
export async function GET(): Promise<Response> {
  const [worker, assets] = await Promise.all([
    readFile(join(process.cwd(), 'lib/worker/sw.js'), 'utf8'),
    readFile(join(process.cwd(), '.next/own-assets.json'), 'utf8'),
  ]);
  return new Response(`const build = ${assets};\n${worker}`, {
    headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache' },
  });
}
