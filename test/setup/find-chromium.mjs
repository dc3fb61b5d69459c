import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { installDebian } from './install-debian.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/**
 * The browser the journeys run in: CHROMIUM, or one that is installed, or Debian's package,
 * installed now.
 *
 * @returns {string} path of the program
 * @throws {Error} one sentence, when there is none
 */
export function findChromium() {
  const chosen = process.env.CHROMIUM;
  if (chosen !== undefined && chosen !== '') {
    if (existsSync(chosen)) return chosen;
    throw new Error(`CHROMIUM=${chosen} is not there; correct it, or leave it out.`);
  }
  const found = installed() ?? (installDebian('chromium') ? installed() : undefined);
  if (found !== undefined) return found;
  throw new Error(
    'The journeys need Chromium: install it (on Debian: apt-get install chromium), or set CHROMIUM to the path of one.',
  );
}

function installed() {
  const folders = ['/usr/bin', ...(process.env.PATH ?? '').split(delimiter)];
  return folders
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((file) => existsSync(file));
}
