/**
 * How many tests passed and failed, from vitest's JSON note of a run.
 *
 * A test that did not run is no proof, so a skipped or a planned one counts as failed; so does a file
 * that could not be loaded, which vitest counts as no test at all.
 *
 * @param {{ numPassedTests: number, numFailedTests: number, numPendingTests: number,
 *   numTodoTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }
 *   | undefined} note undefined when vitest ended without one
 * @returns {{ passed: number, failed: number }}
 */
export function vitestCounts(note) {
  if (note === undefined) return { passed: 0, failed: 0 };
  const idle = note.numPendingTests + note.numTodoTests;
  if (idle > 0) console.error(`${idle} tests were skipped; a skipped test counts as failed.`);
  const unloaded = note.testResults.filter(
    ({ status, assertionResults }) =>
      status === 'failed' && !assertionResults.some((test) => test.status === 'failed'),
  );
  return {
    passed: note.numPassedTests,
    failed: note.numFailedTests + idle + unloaded.length,
  };
}

/**
 * What failed, each with its first line of why, for the end of a long run.
 *
 * @param {{ testResults: { name: string, message?: string, status: string, assertionResults:
 *   { status: string, fullName: string, failureMessages: string[] }[] }[] } | undefined} note
 * @returns {string[]}
 */
export function failedTitles(note) {
  return (note?.testResults ?? []).flatMap(({ name, message, status, assertionResults }) => {
    const failed = assertionResults.filter((test) => test.status === 'failed');
    if (failed.length === 0 && status === 'failed') return [`${name}: ${firstLine(message)}`];
    return failed.map((test) => `${test.fullName}: ${firstLine(test.failureMessages[0])}`);
  });
}

/** @param {string | undefined} text */
function firstLine(text) {
  return (text ?? '').split('\n', 1)[0] ?? '';
}
