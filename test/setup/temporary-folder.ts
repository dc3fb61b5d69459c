import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder for the test that is running, removed when it ends. */
export function temporaryFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'fitwright-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
