import { readFileSync } from 'node:fs';
import { Refusal } from './refusal.mjs';

const networkKinds = /^(nfs\d?|cifs|smb\d?|smbfs|fuse\.sshfs|afs|ncpfs)$/;

/**
 * Refuses to keep a SQLite notebook on a network share, where its locks do not hold and files have
 * been lost or overwritten. Knows only what /proc/mounts tells; where there is none, nothing is
 * refused.
 *
 * @param {string} folder absolute, with links resolved
 * @param {string} [mounts] text in the form of /proc/mounts
 * @throws {Refusal}
 */
export function refuseNetworkFileSystem(folder, mounts = readMounts()) {
  const kind = fileSystemOf(folder, mounts);
  if (kind === undefined || !networkKinds.test(kind)) return;
  throw new Refusal(
    `${folder} is on a network share (${kind}), where a SQLite notebook can be lost. Nothing was made there. Keep it on a disk of this machine, or use PostgreSQL: DATABASE_URL=postgresql://…`,
  );
}

/** The kind of the mount that is nearest above the folder; the last one wins where two are stacked. */
function fileSystemOf(folder, mounts) {
  let best = { point: '', kind: undefined };
  for (const line of mounts.split('\n')) {
    const [, escaped, kind] = line.split(' ');
    if (escaped === undefined) continue;
    const point = escaped.replace(/\\(\d{3})/g, (_, octal) =>
      String.fromCharCode(Number.parseInt(octal, 8)),
    );
    const above = point === '/' || folder === point || folder.startsWith(`${point}/`);
    if (above && point.length >= best.point.length) best = { point, kind };
  }
  return best.kind;
}

function readMounts() {
  try {
    return readFileSync('/proc/mounts', 'utf8');
  } catch {
    return '';
  }
}
