/*
 * How long a second start takes to its first reply, and what the idle server weighs, beside a bare Next server
 * started in the same rounds; and the script each page loads, compressed.
 *
 *     npm run measure:start
 *
 * Nothing is judged here; what misses its aim is printed so.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { buildIfBehind } from '@/lib/command/build.mjs';
import { root } from '@/lib/command/root.mjs';
import { freePort } from '../setup/free-port.mjs';
import { startServer } from '../setup/start-server.mjs';
import { median } from './median';
import { printTable, type Row } from './table';

const rounds = 7;
const settleMs = 3_000;
const startMsMost = 3_000;
const benchBytesMost = 170_000;

mkdirSync(join(root, 'test/.out'), { recursive: true });
const bare = mkdtempSync(join(root, 'test/.out/bare-'));
try {
  buildIfBehind();
  makeBareApp();
  const own: Started[] = [];
  const beside: Started[] = [];
  for (let round = -1; round < rounds; round += 1) {
    const [ours, theirs] = [await startOwn(), await startBare()];
    if (round < 0) continue; // the round before the first warms up
    own.push(ours);
    beside.push(theirs);
  }
  const middle = (list: Started[], key: keyof Started) => median(list.map((one) => one[key]));
  const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`;
  const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(0)} MB`;
  const against = (figure: string) => `bare Next server ${figure}`;
  const reply = middle(own, 'replyMs');
  const rows: Row[] = [
    {
      what: 'second start to the first reply',
      own: seconds(reply),
      against: against(seconds(middle(beside, 'replyMs'))),
      aim: reply <= startMsMost ? '3 s' : '3 s, missed',
    },
    {
      what: 'idle memory, 3 s after it',
      own: megabytes(middle(own, 'bytes')),
      against: against(megabytes(middle(beside, 'bytes'))),
      aim: '',
    },
  ];
  for (const [name, bytes] of await scriptBytes()) {
    const isMissed = name === 'Bench' && bytes > benchBytesMost;
    rows.push({
      what: `script of ${name}, gzip`,
      own: `${(bytes / 1000).toFixed(1)} kB`,
      against: '',
      aim: name === 'Bench' ? `${benchBytesMost / 1000} kB${isMissed ? ', missed' : ''}` : '',
    });
  }
  printTable(rows);
} finally {
  rmSync(bare, { recursive: true, force: true });
}

type Started = { replyMs: number; bytes: number };

async function startOwn(): Promise<Started> {
  const server = await startServer();
  await server.stop();
  const begun = performance.now();
  await server.restart();
  await (await fetch(`${server.url}/api/v1/hello`)).arrayBuffer();
  const replyMs = performance.now() - begun;
  await sleep(settleMs);
  const bytes = residentBytes(server.pid);
  await server.remove();
  return { replyMs, bytes };
}

/** The smallest app there is: one page, one route, no database, started the way Next starts it. */
function makeBareApp(): void {
  mkdirSync(join(bare, 'app/hello'), { recursive: true });
  writeFileSync(join(bare, 'package.json'), '{"private":true,"type":"module"}');
  writeFileSync(
    join(bare, 'app/layout.jsx'),
    'export default ({ children }) => <html lang="en"><body>{children}</body></html>;',
  );
  writeFileSync(join(bare, 'app/page.jsx'), 'export default () => <p>bare</p>;');
  writeFileSync(
    join(bare, 'app/hello/route.js'),
    "export const dynamic = 'force-dynamic';\nexport const GET = () => Response.json({ hello: 'bare' });",
  );
  writeFileSync(
    join(bare, 'next.config.mjs'),
    `export default { turbopack: { root: ${JSON.stringify(root)} } };`,
  );
  symlinkSync(join(root, 'node_modules'), join(bare, 'node_modules'), 'dir');
  const built = spawnSync(process.execPath, [nextCommand(), 'build'], {
    cwd: bare,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' },
    encoding: 'utf8',
  });
  if (built.status !== 0)
    throw new Error(`the bare app did not build:\n${built.stdout}${built.stderr}`);
}

async function startBare(): Promise<Started> {
  const port = await freePort();
  const begun = performance.now();
  const child = spawn(
    process.execPath,
    [nextCommand(), 'start', '-p', String(port), '-H', '127.0.0.1'],
    { cwd: bare, env: { ...process.env, NEXT_TELEMETRY_DISABLED: '1' }, stdio: 'ignore' },
  );
  while (true) {
    const answer = await fetch(`http://127.0.0.1:${port}/hello`).catch(() => null);
    if (answer?.ok === true) {
      await answer.arrayBuffer();
      break;
    }
    await sleep(10);
  }
  const replyMs = performance.now() - begun;
  await sleep(settleMs);
  const bytes = residentBytes(child.pid!);
  child.kill();
  await new Promise((done) => child.once('close', done));
  return { replyMs, bytes };
}

/** Script a page loads before anything is pressed, each file compressed as a server would. */
async function scriptBytes(): Promise<[string, number][]> {
  const server = await startServer();
  try {
    const answer = await fetch(`${server.url}/api/v1/example`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: server.url },
      body: '{}',
    });
    const { jobId } = (await answer.json()) as { jobId: string };
    const pages = {
      Jobs: '/',
      Board: `/jobs/${jobId}/board`,
      Bench: `/jobs/${jobId}/bench`,
      Fits: `/jobs/${jobId}/fits`,
      Runs: `/jobs/${jobId}/runs`,
      Gauges: '/gauges',
    };
    const sizes: [string, number][] = [];
    for (const [name, path] of Object.entries(pages)) {
      const html = await (await fetch(server.url + path)).text();
      const sources = new Set(
        [...html.matchAll(/<script[^>]* src="([^"]+)"[^>]*>/g)]
          .filter(([tag]) => !tag.includes('noModule'))
          .map(([, source]) => source!.replaceAll('&amp;', '&')),
      );
      let bytes = 0;
      for (const source of sources) {
        const file = await fetch(new URL(source, server.url));
        bytes += gzipSync(Buffer.from(await file.arrayBuffer()), { level: 9 }).length;
      }
      sizes.push([name, bytes]);
    }
    return sizes;
  } finally {
    await server.remove();
  }
}

function nextCommand(): string {
  return join(root, 'node_modules/next/dist/bin/next');
}

/** Resident memory of a process and its children, as Linux counts it. */
function residentBytes(pid: number): number {
  const listed = spawnSync('ps', ['-e', '-o', 'pid=,ppid=,rss='], { encoding: 'utf8' }).stdout;
  const rows = listed
    .trim()
    .split('\n')
    .map((line) => line.trim().split(/\s+/).map(Number) as [number, number, number]);
  const family = new Set([pid]);
  for (const [child, parent] of rows) if (family.has(parent)) family.add(child);
  return rows.filter(([id]) => family.has(id)).reduce((sum, [, , rss]) => sum + rss * 1024, 0);
}

function sleep(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}
