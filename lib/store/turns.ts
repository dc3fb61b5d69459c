/**
 * One at a time, first come first served.
 *
 * SQLite has one writer, and its driver waits for the lock without letting anything else in this process
 * go on. So a writer that finds another writer of the same process at work has to wait here instead.
 *
 * @example
 * const done = await turns.take();
 * try { ... } finally { done(); }
 */
export class Turns {
  #last: Promise<void> = Promise.resolve();

  take(): Promise<() => void> {
    const before = this.#last;
    return new Promise((begin) => {
      this.#last = new Promise((done) => {
        void before.then(() => begin(done));
      });
    });
  }
}
