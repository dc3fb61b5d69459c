import type { Environment } from './environment';

/** What a promise brings, or `late()` thrown when it has not come within `delayMs`. The promise itself runs on. */
export async function withTimeout<T>(
  env: Pick<Environment, 'after'>,
  delayMs: number,
  promise: Promise<T>,
  late: () => Error,
): Promise<T> {
  let callOff: (() => void) | undefined;
  const timeout = new Promise<never>((_, reject) => {
    callOff = env.after(delayMs, () => reject(late()));
  });
  try {
    return await Promise.race([promise, timeout]);
  } finally {
    callOff?.();
  }
}
