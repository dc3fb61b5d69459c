import { cpSync, existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';

const keepDays = 30;

/**
 * Keeps the scripts and styles of earlier builds beside those of the next one, so that a page that
 * was open during an update can still load its parts. The names carry hashes and cannot collide.
 *
 * Called before a build; the returned function is called after it. What no build of the last
 * thirty days has made is dropped.
 *
 * @param {string} next the `.next` folder; its `cache` is the one place that a build leaves alone
 * @returns {() => void}
 */
export function keepEarlierAssets(next) {
  const assets = join(next, 'static');
  const kept = join(next, 'cache', 'earlier-assets');
  if (existsSync(assets)) cpSync(assets, kept, { recursive: true, preserveTimestamps: true });
  return () => {
    const now = Date.now();
    for (const name of filesIn(kept)) {
      const [from, to] = [join(kept, name), join(assets, name)];
      if (now - statSync(from).mtimeMs > keepDays * 86_400_000) {
        rmSync(from);
      } else if (!existsSync(to)) {
        mkdirSync(dirname(to), { recursive: true });
        cpSync(from, to, { preserveTimestamps: true });
      }
    }
  };
}

function filesIn(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );
}
