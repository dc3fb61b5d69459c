/** What an API answer that was not a success says, as far as words need it. */
type Problem = {
  status: number;
  code: string;
  title: string;
  errors: readonly { at: string; says: string }[];
};

/**
 * What a person reads when the notebook did not take something: what happened, what is safe, what to do.
 * Null stands for a fault nobody foresaw.
 */
export function problemWords(problem: Problem | null): string {
  if (problem === null) {
    return 'The notebook did not take this, and nothing was changed. Try it again.';
  }
  if (problem.status === 0) {
    return 'The notebook does not answer. Nothing was changed; try again when it does.';
  }
  if (problem.status === 409) {
    return 'Somebody changed this since you opened it. It now stands as they left it; change it again if you still want to.';
  }
  if (problem.status >= 500) {
    return 'The notebook could not keep this, and nothing was changed. The reason is in its log.';
  }
  if (problem.code === 'final-pairs') {
    return 'Final pairs stand on this. Undo them on the Fits sheet first, each with its reason. Nothing was changed.';
  }
  if (problem.code === 'pair-mark-taken') {
    return 'Another final pair of this fit carries that mark by now. Give this pair another mark, or make it final again: it then takes the next free one. Nothing was changed.';
  }
  const says = problem.errors[0]?.says ?? '';
  const isMore = says !== '' && says !== problem.title;
  const reason = isMore ? `${problem.title}: ${says}` : problem.title;
  return `${reason}. Nothing was changed.`;
}
