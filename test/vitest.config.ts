import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Unit, property and reference tests: no server and no browser, and no database but a file of the test's own. */
export default defineConfig({
  root,
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    setupFiles: ['test/setup/same-draws.ts'],
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    exclude: [
      'test/store/**',
      'test/api/**',
      'test/journeys/**',
      'test/command/kept/**',
      'test/command/served/**',
      'node_modules/**',
    ],
  },
});
