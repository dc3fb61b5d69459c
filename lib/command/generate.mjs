// Makes the two typed database clients in generated/ from one set of models, without a network.
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, writeFileSync, chmodSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { root } from './root.mjs';

export const providers = ['sqlite', 'postgresql'];

/** Lays base and models together (copies, so that it works where links do not) and runs the generator. */
export function generate() {
  for (const provider of providers) {
    const home = join(root, 'generated', provider);
    rmSync(home, { recursive: true, force: true });
    mkdirSync(join(home, 'schema'), { recursive: true });
    cpSync(join(root, 'prisma/models'), join(home, 'schema'), { recursive: true });
    cpSync(join(root, 'prisma', provider, 'base.prisma'), join(home, 'schema/base.prisma'));
    run(home);
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

if (process.argv[1] === fileURLToPath(import.meta.url)) generate();
