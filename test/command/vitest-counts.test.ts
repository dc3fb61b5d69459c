import { describe, expect, it } from 'vitest';
import { failedTitles, vitestCounts } from '../setup/vitest-counts.mjs';

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

describe('failedTitles', () => {
  it('names what failed with the first line of why, and files that could not be loaded', () => {
    const failed = { status: 'failed', fullName: 'fits leave', failureMessages: ['no\nlater'] };
    const passed = { status: 'passed', fullName: 'fits stay', failureMessages: [] };
    const testResults = [
      { name: 'a.test.ts', status: 'failed', assertionResults: [passed, failed] },
      { name: 'b.test.ts', status: 'failed', message: 'unknown word\nat 3', assertionResults: [] },
    ];
    expect(failedTitles({ testResults })).toEqual(['fits leave: no', 'b.test.ts: unknown word']);
  });

  it('has nothing to name where all passed, or where nothing was noted', () => {
    expect(failedTitles(undefined)).toEqual([]);
    expect(
      failedTitles({ testResults: [{ name: 'a', status: 'passed', assertionResults: [] }] }),
    ).toEqual([]);
  });
});
