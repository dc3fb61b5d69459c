// Makes the two typed database clients in generated/ from one set of models, without a network.
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { hashSources } from './hash-sources.mjs';
import { root } from './root.mjs';
import { runAsCommand } from './run-as-command.mjs';

export const providers = ['sqlite', 'postgresql'];

const stamp = join(root, 'generated', 'made-from');

/** Generates only if the models, or the generator, have changed since the last time. */
export function generateIfBehind() {
  if (stampedWith() !== madeFrom()) generate();
}

/** Lays base and models together (copies, so that it works where links do not) and runs the generator. */
export function generate() {
  const hash = madeFrom();
  rmSync(stamp, { force: true });
  for (const provider of providers) {
    const home = join(root, 'generated', provider);
    rmSync(home, { recursive: true, force: true });
    mkdirSync(join(home, 'schema'), { recursive: true });
    cpSync(join(root, 'prisma/models'), join(home, 'schema'), { recursive: true });
    cpSync(join(root, 'prisma', provider, 'base.prisma'), join(home, 'schema/base.prisma'));
    run(home);
  }
  writeFileSync(stamp, hash);
}

function madeFrom() {
  const bases = providers.map((provider) => `prisma/${provider}/base.prisma`);
  const generator = 'node_modules/prisma/package.json';
  return hashSources(['prisma/models', ...bases, generator, 'lib/command/generate.mjs']);
}

function stampedWith() {
  try {
    return readFileSync(stamp, 'utf8');
  } catch {
    return undefined;
  }
}

function run(home) {
  // The generator asks for a schema engine that it does not use; any executable file contents it.
  const stub = join(home, 'no-engine');
  writeFileSync(stub, '#!/bin/sh\nexit 1\n');
  chmodSync(stub, 0o755);
  const cli = join(root, 'node_modules/prisma/build/index.js');
  const done = spawnSync(
    process.execPath,
    [cli, 'generate', '--schema', join(home, 'schema'), '--no-hints'],
    {
      cwd: root,
      encoding: 'utf8',
      env: {
        ...process.env,
        PRISMA_SCHEMA_ENGINE_BINARY: stub,
        PRISMA_HIDE_UPDATE_MESSAGE: '1',
        CHECKPOINT_DISABLE: '1',
      },
    },
  );
  if (done.status !== 0) throw new Error(`prisma generate failed:\n${done.stdout}${done.stderr}`);
}

await runAsCommand(import.meta.url, generate);
