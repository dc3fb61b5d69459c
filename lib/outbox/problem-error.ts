/** What went wrong with a request: the server's answer as RFC 9457 gives it, or that there was none. */
export class ProblemError extends Error {
  override name = 'ProblemError';
  /** The answer's own; 0 where there was none. */
  readonly status: number;
  /** The last word of `type`; `no-network`, `no-answer` or `status-<n>` where the server gave none. */
  readonly code: string;
  readonly title: string;
  readonly errors: readonly { at: string; says: string }[];
  /** The thing as it now is, where a change was made from a stale version. */
  declare readonly current?: unknown;
  /** What was asked for then. */
  declare readonly yours?: unknown;

  constructor(problem: {
    status: number;
    code: string;
    title: string;
    errors?: readonly { at: string; says: string }[];
    current?: unknown;
    yours?: unknown;
    cause?: unknown;
  }) {
    super(`${problem.status} ${problem.code}: ${problem.title}`, { cause: problem.cause });
    this.status = problem.status;
    this.code = problem.code;
    this.title = problem.title;
    this.errors = problem.errors ?? [];
    if (problem.current !== undefined) this.current = problem.current;
    if (problem.yours !== undefined) this.yours = problem.yours;
  }
}
