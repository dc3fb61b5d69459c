import { randomBytes } from 'node:crypto';
import { mkdirSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { refuseNetworkFileSystem } from './network-file-system.mjs';
import { Refusal } from './refusal.mjs';

/**
 * Makes the data folder if need be and makes sure that a notebook can be kept in it.
 *
 * @param {string} folder
 * @throws {Refusal} when it cannot be written or lies on a network share
 */
export function prepareDataFolder(folder) {
  const probe = join(folder, `.probe-${randomBytes(6).toString('hex')}`);
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(probe, '');
    rmSync(probe);
  } catch (error) {
    throw new Refusal(
      `The data folder ${folder} cannot be written (${error.code}). Give this account the right to write there, or choose another place: DATABASE_URL=file:/folder/fitwright.db`,
    );
  }
  refuseNetworkFileSystem(realpathSync(folder));
}
