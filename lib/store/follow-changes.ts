import { setTimeout as rest } from 'node:timers/promises';
import type { Change } from '@/lib/schema/change';
import { changesAfter } from './changes-after';
import { listenToFeed } from './feed';
import { lastSeq } from './last-seq';

type Which = { jobId?: string | undefined; after?: number | undefined };

/** Takes changes in order; more are given when it has answered. Must not throw. */
export type Take = (changes: readonly Change[]) => Promise<void> | void;

const linesMax = 500;
const troubleMs = 1000;

/**
 * Gives every change after a number, each once and in order: first those there are, then each as it is
 * kept, here or by another process on the same database. Without a number only those yet to come.
 *
 * For one who takes slowly nothing is piled up: beyond 500 changes they are read from the log again.
 *
 * @returns how to stop
 */
export async function followChanges({ jobId, after }: Which, take: Take): Promise<() => void> {
  const follower = new Follower(take, jobId);
  const stop = await listenToFeed((changes) => follower.hear(changes));
  try {
    follower.begin(after ?? (await lastSeq()));
  } catch (error) {
    stop();
    throw error;
  }
  return () => {
    follower.stopped = true;
    stop();
  };
}

class Follower {
  stopped = false;
  #heard: Change[] = [];
  #last = Infinity;
  /** There may be changes in the log that are neither given nor heard. */
  #missed = true;
  #giving = true;

  constructor(
    private readonly take: Take,
    private readonly jobId: string | undefined,
  ) {}

  begin(after: number): void {
    this.#last = after;
    void this.#give();
  }

  hear(changes: readonly Change[]): void {
    if (this.#heard.length + changes.length > linesMax) {
      this.#heard = [];
      this.#missed = true;
    } else {
      this.#heard.push(...changes);
    }
    if (!this.#giving) void this.#give();
  }

  async #give(): Promise<void> {
    this.#giving = true;
    while (!this.stopped && (this.#missed || this.#heard.length > 0)) {
      const changes = (await this.#next()).filter((change) => this.#isOurs(change));
      if (changes.length === 0 || this.stopped) continue;
      this.#last = changes.at(-1)!.seq;
      await this.take(changes);
    }
    this.#giving = false;
  }

  async #next(): Promise<readonly Change[]> {
    const heard = this.#heard;
    this.#heard = [];
    if (!this.#missed) return heard;
    // Whatever is kept from here on is heard again, so what was heard can go.
    this.#missed = false;
    try {
      const changes = await changesAfter(this.#last, linesMax, this.jobId);
      this.#missed ||= changes.length === linesMax;
      return changes;
    } catch (error) {
      console.error('the live feed cannot read the change log:', error);
      this.#missed = true;
      await rest(troubleMs);
      return [];
    }
  }

  #isOurs({ seq, jobId }: Change): boolean {
    return seq > this.#last && (this.jobId === undefined || jobId === null || jobId === this.jobId);
  }
}
