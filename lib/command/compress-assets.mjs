import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import {
  brotliCompressSync,
  brotliDecompressSync,
  constants,
  gunzipSync,
  gzipSync,
} from 'node:zlib';

/** What is worth it: a picture or a face is compressed already. */
const text = /\.(?:js|css|svg|json)$/;

/** By the word of the header, how it is made and unmade and how its files end. Smallest first. */
export const codings = {
  br: {
    end: '.br',
    make: (bytes) =>
      brotliCompressSync(bytes, {
        params: {
          [constants.BROTLI_PARAM_MODE]: constants.BROTLI_MODE_TEXT,
          [constants.BROTLI_PARAM_QUALITY]: constants.BROTLI_MAX_QUALITY,
          [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
        },
      }),
    unmake: brotliDecompressSync,
  },
  gzip: { end: '.gz', make: (bytes) => gzipSync(bytes, { level: 9 }), unmake: gunzipSync },
};

/** Where compressed scripts and styles lie: in the one place of `.next` that a build leaves alone. */
export function compressedFolder(next) {
  return join(next, 'cache', 'compressed');
}

/**
 * Compresses the scripts and styles of a build. What is there from builds before is looked into and stays where it
 * is still the same; what belongs to no file any more is dropped. Takes some seconds at first.
 *
 * @param {string} next the `.next` folder
 */
export function compressAssets(next) {
  const assets = join(next, 'static');
  const folder = compressedFolder(next);
  const names = filesIn(assets).filter((name) => text.test(name));
  const wanted = new Set();
  for (const name of names) {
    const bytes = readFileSync(join(assets, name));
    for (const { end, make, unmake } of Object.values(codings)) {
      wanted.add(name + end);
      const to = join(folder, name + end);
      if (holds(to, bytes, unmake)) continue;
      mkdirSync(dirname(to), { recursive: true });
      writeFileSync(to, make(bytes));
    }
  }
  for (const name of filesIn(folder)) if (!wanted.has(name)) rmSync(join(folder, name));
}

function holds(file, bytes, unmake) {
  try {
    return unmake(readFileSync(file)).equals(bytes);
  } catch {
    return false; // It is not there, or was cut short.
  }
}

function filesIn(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );
}
