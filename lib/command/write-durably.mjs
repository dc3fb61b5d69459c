import { closeSync, fsyncSync, openSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** Writes a small file so that after a power cut it is there whole or not at all. */
export function writeDurably(file, text) {
  const part = `${file}.part`;
  writeFileSync(part, text);
  moveDurably(part, file);
}

/** Moves a finished file into its place and waits until the disk has it. */
export function moveDurably(from, to) {
  sync(from);
  renameSync(from, to);
  sync(dirname(to));
}

function sync(path) {
  let handle;
  try {
    handle = openSync(path, 'r');
    fsyncSync(handle);
  } catch (error) {
    // Windows opens no folders and syncs nothing that is open for reading only.
    if (!['EISDIR', 'EPERM', 'EACCES', 'EINVAL'].includes(error.code)) throw error;
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}
