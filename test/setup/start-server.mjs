import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const command = fileURLToPath(new URL('../../lib/command/serve.mjs', import.meta.url));
const readyLine = /Fitwright is ready at (http:\/\/127\.0\.0\.1:(\d+))/;
const patienceMs = 30_000;

/**
 * @typedef {object} RunningServer
 * @property {string} url where it answers, e.g. `http://127.0.0.1:41234`; stays the same over restarts
 * @property {string} databaseUrl its DATABASE_URL
 * @property {string} folder a temporary folder of its own; the notebook is there, if it is SQLite's own
 * @property {number} pid of the process running now
 * @property {() => string} output all that it has printed, over all its starts
 * @property {() => Promise<number | null>} stop SIGTERM; the exit code. Safe to call again.
 * @property {() => Promise<void>} kill SIGKILL, as a power cut would end it
 * @property {() => Promise<void>} restart starts it again on the same data and port, after stop or kill
 * @property {() => Promise<void>} remove stops it and deletes its folder
 */

/**
 * Starts the built server on a free port and waits until it says that it is ready.
 *
 * Without `databaseUrl` it begins a new SQLite notebook in a folder of its own; hand it
 * `await freshDatabase()` to run on the database under test.
 *
 * @param {{ databaseUrl?: string, env?: Record<string, string> }} [options]
 * @returns {Promise<RunningServer>}
 * @throws {Error} with its output, when it ends or stays silent for thirty seconds instead
 * @example
 * const server = await startServer({ databaseUrl: await freshDatabase() });
 * await fetch(`${server.url}/api/v1/jobs`);
 * await server.remove();
 */
export async function startServer({ databaseUrl, env = {} } = {}) {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-server-'));
  const database = databaseUrl ?? `file:${join(folder, 'fitwright.db')}`;
  let output = '';
  let port = '0';
  /** @type {import('node:child_process').ChildProcess} */
  let child;
  /** @type {Promise<number | null>} */
  let ended = Promise.resolve(null);
  const end = (signal) => {
    if (child.exitCode === null && child.signalCode === null) child.kill(signal);
    return ended;
  };
  const start = async () => {
    const begun = output.length;
    child = spawn(process.execPath, [command, '--as-built'], {
      // Told that npm started it, it also stops when the process that runs the tests is gone.
      env: {
        ...process.env,
        npm_lifecycle_event: 'test',
        ...env,
        DATABASE_URL: database,
        PORT: port,
      },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    ended = new Promise((done) => child.once('close', (code) => done(code)));
    const ready = new Promise((done) => {
      for (const stream of [child.stdout, child.stderr]) {
        stream.setEncoding('utf8').on('data', (text) => {
          output += text;
          if (readyLine.test(output.slice(begun))) done(true);
        });
      }
    });
    let timer;
    const tooLong = new Promise((done) => (timer = setTimeout(done, patienceMs, false)));
    const isReady = await Promise.race([ready, ended.then(() => false), tooLong]);
    clearTimeout(timer);
    if (isReady) return;
    await end('SIGKILL');
    throw new Error(`The server did not start:\n${output.slice(begun)}`);
  };
  try {
    await start();
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
  const [, url, chosen] = /** @type {RegExpExecArray} */ (readyLine.exec(output));
  port = chosen;
  return {
    url,
    folder,
    databaseUrl: database,
    get pid() {
      return /** @type {number} */ (child.pid);
    },
    output: () => output,
    stop: () => end('SIGTERM'),
    kill: async () => void (await end('SIGKILL')),
    restart: start,
    remove: async () => {
      await end('SIGTERM');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
