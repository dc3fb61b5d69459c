import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkFolder } from './check-folder';
import { topics } from './topics/index';

/** Cases of the shapes of the reference sets with other inputs, worked by a program apart from the library. */
const folder = join(import.meta.dirname, 'others');
const files = readdirSync(folder).filter((name) => name.endsWith('.json'));

describe('other cases of the same shapes', () => {
  it('stand beside every topic the check can answer', () => {
    expect(files).toHaveLength(topics.length);
  });

  it.each(files)('are all answered, and rightly, in %s', { timeout: 60_000 }, (file) => {
    const [report] = checkFolder(folder, topics, file);
    const wrong = report!.figures.filter(({ figure }) => figure.state !== 'passed');
    expect(wrong).toEqual([]);
    expect(report!.figures.length).toBeGreaterThan(14);
  });
});
