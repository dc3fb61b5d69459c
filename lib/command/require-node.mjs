import { Refusal } from './refusal.mjs';

const least = [20, 19];

/**
 * @param {string} version as in `process.versions.node`
 * @throws {Refusal} when it is older than package.json's `engines` allows
 */
export function requireNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number);
  if (major > least[0] || (major === least[0] && minor >= least[1])) return;
  throw new Refusal(
    `Fitwright needs Node ${least.join('.')} or newer; this is Node ${version}. Install a newer Node from nodejs.org and start again.`,
  );
}
