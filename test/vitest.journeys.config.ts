import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));
const onPostgresql = process.env['TEST_DATABASE'] === 'postgresql';

/**
 * Whole stories in a real browser, on the database that TEST_DATABASE names: `sqlite` if unset, which
 * runs them all, or `postgresql`, which runs those whose file name ends in `.both.test.ts`.
 */
export default defineConfig({
  root,
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  test: {
    include: [`test/journeys/**/*${onPostgresql ? '.both' : ''}.test.ts`],
    globalSetup: ['test/setup/build.ts', 'test/setup/database-template.ts'],
    maxWorkers: 2,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // How fast is for test/measure to say: a machine that has much to do is no fault of what is tested.
    expect: { poll: { timeout: 10_000 } },
  },
});
