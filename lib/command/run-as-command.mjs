import { realpathSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { Refusal } from './refusal.mjs';

/**
 * Runs `main` if its module is the file named on the command line, and nothing otherwise.
 *
 * A Refusal is printed as its sentence alone and ends the process with code 1. Anything else is a
 * fault of the program and keeps its stack.
 *
 * @param {string} moduleUrl `import.meta.url` of the calling module
 * @param {() => unknown} main
 */
export async function runAsCommand(moduleUrl, main) {
  if (!isNamed(moduleUrl)) return;
  try {
    await main();
  } catch (error) {
    console.error(error instanceof Refusal ? error.message : error);
    process.exit(1);
  }
}

function isNamed(moduleUrl) {
  try {
    return pathToFileURL(realpathSync(process.argv[1])).href === moduleUrl;
  } catch {
    return false;
  }
}
