import { execFileSync, spawnSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { freePort } from './free-port.mjs';
import { installDebian } from './install-debian.mjs';

/**
 * A real PostgreSQL to test against: the one at TEST_DATABASE_URL, or one started for these tests
 * alone, on a free port with its data in a temporary folder. It syncs every commit to disk, as a
 * shop's would.
 *
 * @param {Record<string, string>} [settings] of postgresql.conf, for a server started here
 * @returns {Promise<{ url: string, stop: () => void }>} `url` names a database from which others can
 *   be created; `stop` ends a server started here and removes its data
 * @throws {Error} one sentence, when there is none and none can be installed
 */
export async function startPostgres(settings = {}) {
  const given = process.env.TEST_DATABASE_URL;
  if (given !== undefined && given !== '' && Object.keys(settings).length === 0) {
    return { url: given, stop: () => {} };
  }
  const programs = findPrograms();
  const home = mkdtempSync(join(tmpdir(), 'fitwright-postgres-'));
  const runAs = ownedByPostgres(home);
  const data = join(home, 'data');
  const log = join(home, 'log');
  const run = (program, ...words) => {
    const [command, ...rest] = [...runAs, join(programs, program), ...words];
    const done = spawnSync(command, rest, { cwd: home, encoding: 'utf8', stdio: 'pipe' });
    if (done.status === 0) return;
    const why = existsSync(log) ? readFileSync(log, 'utf8') : done.stderr;
    throw new Error(`${program} failed:\n${done.stdout}${why}`);
  };
  run('initdb', '--pgdata', data, '--username=postgres', '--auth=trust', '--encoding=UTF8',
    '--locale=C', '--no-sync'); // prettier-ignore
  const port = await freePort();
  const all = { listen_addresses: '127.0.0.1', port, unix_socket_directories: '', ...settings };
  const options = Object.entries(all).map(([name, text]) => `-c ${name}='${text}'`);
  // Its output goes to the log: a pipe kept open by the server would never let pg_ctl's caller end.
  run('pg_ctl', '--pgdata', data, '--log', log, '-o', options.join(' '), '--wait', 'start');
  const stop = () => {
    run('pg_ctl', '--pgdata', data, '--mode=immediate', '--wait', 'stop');
    rmSync(home, { recursive: true, force: true });
  };
  return { url: `postgresql://postgres@127.0.0.1:${port}/postgres`, stop };
}

function findPrograms() {
  const found = installed() ?? (installDebian('postgresql') ? installed() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'The tests need PostgreSQL: install it (on Debian: apt-get install postgresql), or set TEST_DATABASE_URL to a server where databases may be created.',
  );
}

function installed() {
  const debian = '/usr/lib/postgresql';
  const versions = existsSync(debian)
    ? readdirSync(debian).sort((a, b) => Number(b) - Number(a))
    : [];
  const folders = versions.map((version) => join(debian, version, 'bin'));
  const asked = spawnSync('pg_config', ['--bindir'], { encoding: 'utf8' });
  if (asked.status === 0) folders.push(asked.stdout.trim());
  return folders.find((folder) => existsSync(join(folder, 'initdb')));
}

/** PostgreSQL refuses to run as root, so root hands it to the account its package has made. */
function ownedByPostgres(folder) {
  if (process.getuid?.() !== 0) return [];
  chownSync(folder, idOfPostgres('-u'), idOfPostgres('-g'));
  return ['runuser', '-u', 'postgres', '--'];
}

function idOfPostgres(flag) {
  return Number(execFileSync('id', [flag, 'postgres'], { encoding: 'utf8' }));
}
