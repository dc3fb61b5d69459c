import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * One hash over names and contents, so that "is this still made from those?" needs no clock.
 *
 * @param {readonly string[]} paths files and folders below the project folder, with `/`; a missing
 *   one counts as missing, which is a state of its own
 * @param {string} [base] the project folder
 * @returns {string} 64 hexadecimal digits. Cost: reads every file once.
 */
export function hashSources(paths, base = root) {
  const hash = createHash('sha256');
  for (const path of paths.flatMap((top) => filesUnder(top, base)).sort()) {
    hash.update(`${path}\0`);
    hash.update(createHash('sha256').update(content(path, base)).digest());
  }
  return hash.digest('hex');
}

function filesUnder(path, base) {
  const found = statSync(join(base, path), { throwIfNoEntry: false });
  if (found === undefined) return [`${path} is missing`];
  if (!found.isDirectory()) return [path];
  return readdirSync(join(base, path)).flatMap((name) => filesUnder(`${path}/${name}`, base));
}

function content(path, base) {
  if (path.endsWith(' is missing')) return '';
  const bytes = readFileSync(join(base, path));
  return path === 'tsconfig.json' ? compilerOptions(bytes) : bytes;
}

/** Next rewrites the layout and the `include` list of tsconfig.json; only the options change a build. */
function compilerOptions(bytes) {
  try {
    return JSON.stringify(JSON.parse(bytes.toString('utf8')).compilerOptions);
  } catch {
    return bytes;
  }
}
