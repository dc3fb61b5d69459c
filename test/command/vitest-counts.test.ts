import { describe, expect, it } from 'vitest';
import { vitestCounts } from '../setup/vitest-counts.mjs';

const good = { status: 'passed', assertionResults: [{ status: 'passed' }] };
const note = {
  numPassedTests: 7,
  numFailedTests: 0,
  numPendingTests: 0,
  numTodoTests: 0,
  testResults: [good],
};

describe('vitestCounts', () => {
  it('adds nothing to a clean run', () => {
    expect(vitestCounts(note)).toEqual({ passed: 7, failed: 0 });
  });

  it('counts a failed test once', () => {
    const bad = { status: 'failed', assertionResults: [{ status: 'failed' }] };
    const run = { ...note, numFailedTests: 1, testResults: [good, bad] };
    expect(vitestCounts(run)).toEqual({ passed: 7, failed: 1 });
  });

  it('counts a file that could not be loaded as a failure', () => {
    const run = { ...note, testResults: [good, { status: 'failed', assertionResults: [] }] };
    expect(vitestCounts(run)).toEqual({ passed: 7, failed: 1 });
  });

  it('counts skipped and planned tests as failed', () => {
    expect(vitestCounts({ ...note, numPendingTests: 2, numTodoTests: 1 })).toEqual({
      passed: 7,
      failed: 3,
    });
  });

  it('proves nothing without a note', () => {
    expect(vitestCounts(undefined)).toEqual({ passed: 0, failed: 0 });
  });
});
