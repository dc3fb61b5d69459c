import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/**
 * Installs a Debian package, where that can be done without asking anyone: as root, on Debian or one
 * of its kin.
 *
 * @param {string} name
 * @returns {boolean} whether it was tried and succeeded
 */
export function installDebian(name) {
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || !existsSync('/etc/debian_version')) return false;
  console.log(`Installing Debian's package ${name}…`);
  return apt('update') && apt('install', '--yes', '--no-install-recommends', name);
}

function apt(...words) {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const done = spawnSync('apt-get', ['-qq', ...words], { env, encoding: 'utf8' });
  if (done.status !== 0) console.error(`apt-get ${words.join(' ')}:\n${done.stdout}${done.stderr}`);
  return done.status === 0;
}
