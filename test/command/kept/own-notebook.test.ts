import { expect, it } from 'vitest';
import { databaseUrl } from '@/lib/command/database-url.mjs';
import { migrate } from '@/lib/command/migrate.mjs';
import { freshDatabase } from '../../setup/fresh-database';

it('gives a test file a notebook that is up to date, in the database asked for', async () => {
  expect(databaseUrl().provider).toBe(process.env['TEST_DATABASE'] ?? 'sqlite');
  expect(await migrate()).toEqual({ applied: [], backup: null });
});

it('gives another one to whoever asks', async () => {
  const other = await freshDatabase();
  expect(other).not.toBe(process.env['DATABASE_URL']);
  expect(await migrate(other)).toEqual({ applied: [], backup: null });
});
