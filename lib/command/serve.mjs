// Everything `npm start` does, in order; with --dev, what `npm run dev` does.
import { createServer } from 'node:http';
import { join } from 'node:path';
import { buildIfBehind, hasBuild } from './build.mjs';
import { compressedAssets } from './compressed-assets.mjs';
import { prepareDataFolder } from './data-folder.mjs';
import { databaseUrl } from './database-url.mjs';
import { generateIfBehind } from './generate.mjs';
import { installIfBehind } from './install.mjs';
import { migrate } from './migrate.mjs';
import { lockNotebook } from './notebook-lock.mjs';
import { isOwnHost } from './own-host.mjs';
import { address, choosePort, listen } from './port.mjs';
import { Refusal } from './refusal.mjs';
import { requireNode } from './require-node.mjs';
import { root } from './root.mjs';
import { runAsCommand } from './run-as-command.mjs';
import { securityHeaders } from './security-headers.mjs';
import { stopCleanly } from './stop-cleanly.mjs';

/**
 * Installs, generates, builds and migrates what needs it, then serves until told to stop.
 *
 * What a person may have got wrong is looked at first, before anything that takes time.
 *
 * @param {{ dev?: boolean, asBuilt?: boolean }} [options] `dev`: compile on request, reload on
 *   change; `asBuilt`: serve the build that is there, whatever the sources are now
 * @throws {Refusal} when it cannot serve
 */
export async function serve({ dev = false, asBuilt = false } = {}) {
  requireNode();
  process.env.NODE_ENV = dev ? 'development' : 'production';
  process.env.NEXT_TELEMETRY_DISABLED = '1';
  const database = databaseUrl();
  process.env.DATABASE_URL = database.url;
  const port = await choosePort();
  const url = `http://${address}:${port}`;
  if (database.provider === 'sqlite') prepareDataFolder(database.folder);
  if (!asBuilt) installIfBehind();
  const release =
    database.provider === 'sqlite'
      ? await lockNotebook(database.folder, `serving ${url}`)
      : () => {};
  if (!asBuilt) generateIfBehind();
  if (!dev && !asBuilt) buildIfBehind();
  if (!dev && !hasBuild()) throw new Refusal('There is no build. Make one with: npm run build');
  const { applied, backup } = await migrate();
  if (backup !== null) console.log(`The notebook was copied to ${backup} before its update.`);
  if (applied.length > 0) console.log(`The notebook is up to date (${applied.join(', ')}).`);
  const stop = await open({ dev, port });
  stopOnSignal(async () => {
    await stop();
    release();
  });
  console.log(`Fitwright is ready at ${url}`);
}

async function open({ dev, port }) {
  const { default: next } = await import('next');
  const server = createServer();
  const app = next({ dev, dir: root, hostname: address, port, httpServer: server });
  await app.prepare();
  const handle = app.getRequestHandler();
  const secure = securityHeaders({ dev, next: join(root, '.next') });
  const compressed = dev ? () => false : compressedAssets({ next: join(root, '.next') });
  const { follow, stop } = stopCleanly(server);
  server.on('request', (request, response) => {
    if (!isOwnHost(request.headers.host)) return misdirected(response);
    follow(response);
    secure(request, response);
    if (compressed(request, response)) return;
    handle(request, response).catch((error) => {
      console.error(error);
      response.destroy();
    });
  });
  server.on('upgrade', (request, socket) => {
    if (!isOwnHost(request.headers.host)) socket.destroy();
  });
  await listen(server, port);
  return async () => {
    await stop();
    await app.close();
  };
}

function misdirected(response) {
  response.writeHead(421, { 'Content-Type': 'text/plain; charset=utf-8', Connection: 'close' });
  response.end('Fitwright answers here only under the names localhost and 127.0.0.1.\n');
}

/**
 * Stops on a signal. A second one changes nothing: npm passes on the one that the terminal has sent
 * as well. A signal sent to npm alone ends only the shell between npm and this process, which is
 * seen by the parent changing.
 */
function stopOnSignal(stop) {
  let stopping = false;
  const onSignal = async () => {
    if (stopping) return;
    stopping = true;
    console.log('Stopping; what is being written is finished first…');
    await stop();
    process.exit(0);
  };
  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP']) process.on(signal, onSignal);
  process.stdout.on('error', () => {}); // a closed terminal must not cut the stop short
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  setInterval(() => process.ppid !== parent && onSignal(), 100).unref();
}

await runAsCommand(import.meta.url, () =>
  serve({
    dev: process.argv.includes('--dev'),
    asBuilt: process.argv.includes('--as-built'),
  }),
);
