import { buildIfBehind } from '@/lib/command/build.mjs';
import { generateIfBehind } from '@/lib/command/generate.mjs';

/** Vitest's global setup wherever a server is started: the build is that of the sources as they are. */
export default function setup(): void {
  generateIfBehind();
  buildIfBehind();
}
