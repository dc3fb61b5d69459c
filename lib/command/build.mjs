// Builds the application into .next, if what is there was not built from these sources.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { compressAssets } from './compress-assets.mjs';
import { hashSources } from './hash-sources.mjs';
import { keepEarlierAssets } from './keep-earlier-assets.mjs';
import { Refusal } from './refusal.mjs';
import { root } from './root.mjs';
import { generateIfBehind } from './generate.mjs';
import { installIfBehind } from './install.mjs';
import { runAsCommand } from './run-as-command.mjs';

/** Holds the hash of the sources; written last, so a build cut short counts as none. */
const stamp = join(root, '.next', 'built-from');

/** Everything that can change what is built. The test folder and the data folder are not in it. */
const sources = [
  'app',
  'lib',
  'prisma',
  'next.config.mjs',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
];

/** @returns {boolean} whether .next holds a finished build of the sources as they are now */
export function isBuilt() {
  return builtFrom() === hashSources(sources);
}

/** @returns {boolean} whether .next holds a finished build of whatever sources */
export function hasBuild() {
  return builtFrom() !== undefined;
}

/** @throws {Refusal} when the sources do not build */
export function buildIfBehind() {
  if (isBuilt()) return;
  console.log('Building; this takes about half a minute, and only after a change…');
  build();
}

/** @throws {Refusal} when the sources do not build */
export function build() {
  const hash = hashSources(sources);
  rmSync(stamp, { force: true });
  const keep = keepEarlierAssets(join(root, '.next'));
  const next = join(root, 'node_modules/next/dist/bin/next');
  const done = spawnSync(process.execPath, [next, 'build'], {
    cwd: root,
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (done.status !== 0) {
    throw new Refusal('The build failed; what it said is above. The notebook was not touched.');
  }
  writeFileSync(join(root, '.next', 'own-assets.json'), JSON.stringify(ownAssets()));
  keep();
  compressAssets(join(root, '.next'));
  writeFileSync(stamp, hash);
}

/** What a device keeps of this build to open its pages without a network, and the build's own name. */
function ownAssets() {
  const next = join(root, '.next');
  const files = readdirSync(join(next, 'static'), { recursive: true, encoding: 'utf8' });
  return {
    id: readFileSync(join(next, 'BUILD_ID'), 'utf8').trim(),
    assets: files
      .filter((name) => /\.(js|css|woff2)$/.test(name))
      .map((name) => `/_next/static/${name.replaceAll('\\', '/')}`)
      .sort(),
  };
}

function builtFrom() {
  try {
    return readFileSync(stamp, 'utf8');
  } catch {
    return undefined;
  }
}

await runAsCommand(import.meta.url, () => {
  installIfBehind();
  generateIfBehind();
  build();
});
