// Installs what package-lock.json says, if node_modules does not hold it already.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Refusal } from './refusal.mjs';
import { root } from './root.mjs';
import { runAsCommand } from './run-as-command.mjs';

/** @throws {Refusal} when npm cannot install */
export function installIfBehind() {
  if (isInstalled()) return;
  console.log('Installing packages as the lock file says; this takes about a minute…');
  const { NODE_ENV: _, ...env } = process.env;
  const [command, ...first] = npm();
  const done = spawnSync(command, [...first, 'ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    env,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: first.length === 0 && process.platform === 'win32',
  });
  if (done.status === 0 && isInstalled()) return;
  throw new Refusal(
    'The packages could not be installed; what npm said is above. Nothing of the notebook was touched. Connect to the network and start again.',
  );
}

/**
 * Compares npm's own note of what is in node_modules with the lock file. A package that is optional
 * (built for another machine) may be absent; one that is there must be the one locked.
 *
 * @param {string} [folder] the folder of package-lock.json
 */
export function isInstalled(folder = root) {
  const locked = packagesIn(join(folder, 'package-lock.json'));
  const present = packagesIn(join(folder, 'node_modules/.package-lock.json'));
  if (locked === undefined || present === undefined) return false;
  return Object.entries(locked).every(([path, wanted]) => {
    if (path === '') return true;
    const got = present[path];
    if (got === undefined) return wanted.optional === true;
    return got.version === wanted.version && got.integrity === wanted.integrity;
  });
}

function packagesIn(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** The npm that started this, or the one on the path. */
function npm() {
  const running = process.env.npm_execpath;
  return running?.endsWith('.js') ? [process.execPath, running] : ['npm'];
}

await runAsCommand(import.meta.url, installIfBehind);
