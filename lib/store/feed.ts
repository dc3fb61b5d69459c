import type { Change } from '@/lib/schema/change';
import { changesAfter } from './changes-after';
import { lastSeq } from './last-seq';

/** How often the change log is looked at while anyone listens; writes of this process do not wait for it. */
const everyMs = 150;
const linesMax = 500;

/** Must not throw. */
type Listener = (changes: readonly Change[]) => void;

/**
 * Follows the change log for everybody in this process who listens: one look at the log serves them all,
 * and what other processes write to the same database is seen as well.
 */
class Feed {
  #listeners = new Set<Listener>();
  #seq: number | undefined;
  #timer: NodeJS.Timeout | undefined;
  #looking = false;
  #again = false;
  #trouble = false;

  /** From when it answers, `listener` is given every change that comes; the answer is how to stop. */
  async listen(listener: Listener): Promise<() => void> {
    this.#seq ??= await lastSeq();
    this.#listeners.add(listener);
    this.wake();
    return () => {
      this.#listeners.delete(listener);
      if (this.#listeners.size === 0) this.#rest();
    };
  }

  wake(): void {
    if (this.#looking) this.#again = true;
    else if (this.#listeners.size > 0) void this.#look();
  }

  async #look(): Promise<void> {
    clearTimeout(this.#timer);
    this.#looking = true;
    this.#again = false;
    try {
      await this.#tell();
      this.#trouble = false;
    } catch (error) {
      if (!this.#trouble) console.error('the live feed cannot read the change log:', error);
      this.#trouble = true;
    }
    this.#looking = false;
    if (this.#listeners.size === 0) this.#rest();
    else if (this.#again) this.wake();
    else this.#timer = setTimeout(() => this.wake(), everyMs).unref();
  }

  async #tell(): Promise<void> {
    const changes = await changesAfter(this.#seq ?? (await lastSeq()), linesMax);
    if (changes.length === 0) return;
    this.#seq = changes.at(-1)!.seq;
    if (changes.length === linesMax) this.#again = true;
    for (const listener of this.#listeners) listener(changes);
  }

  /** Where the log stands when somebody listens again is asked then. */
  #rest(): void {
    clearTimeout(this.#timer);
    this.#seq = undefined;
  }
}

/** Kept on the process: every route of a built server may have a copy of this module of its own. */
const shared = globalThis as { fitwrightFeed?: Feed };

/** Gives `listener` every change from now on, in order; the answer is how to stop. */
export function listenToFeed(listener: Listener): Promise<() => void> {
  return (shared.fitwrightFeed ??= new Feed()).listen(listener);
}

/** Something was kept: whoever listens is told at once. */
export function wakeFeed(): void {
  shared.fitwrightFeed?.wake();
}
