import { expect, it } from 'vitest';
import { hereWords } from '@/lib/text/here-words';

it('says what a page opened without the notebook can do, and what it cannot', () => {
  expect(hereWords('jobs', 2)).toBe(
    'The notebook does not answer. These jobs were opened here before: measure and log, and all of it goes into the book when it answers.',
  );
  expect(hereWords('job', 1)).toContain(
    'The notebook does not answer, and this job was never opened on this device.',
  );
  expect(hereWords('other', 0)).toBe(
    'The notebook does not answer, and this sheet needs it. No job has been opened on this device yet; come back when it answers.',
  );
});
