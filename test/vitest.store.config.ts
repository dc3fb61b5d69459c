import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * What is kept, on the database that TEST_DATABASE names: `sqlite` if unset, or `postgresql`. Each
 * test file has a migrated, empty notebook of its own at DATABASE_URL before it is loaded.
 */
export default defineConfig({
  root,
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    include: ['test/store/**/*.test.ts', 'test/command/kept/**/*.test.ts'],
    globalSetup: ['test/setup/database-template.ts'],
    setupFiles: ['test/setup/own-database.ts'],
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
