import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * The HTTP API, against a running server on the database that TEST_DATABASE names: `sqlite` if unset,
 * or `postgresql`. Test files start their own server: see test/setup/start-server.mjs.
 */
export default defineConfig({
  root,
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    include: ['test/api/**/*.test.ts', 'test/command/served/**/*.test.ts'],
    globalSetup: ['test/setup/build.ts', 'test/setup/database-template.ts'],
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
