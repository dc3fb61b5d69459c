import type { Draft } from './entry';

/** What stands in the way of keeping or sending; the words for the screen are looked up by it. */
export type TroubleCode =
  | 'outbox/storage-full'
  | 'outbox/storage-lost'
  | 'outbox/blocked'
  | 'outbox/old-tab'
  | 'outbox/no-network'
  | 'outbox/no-answer'
  | 'outbox/server'
  | 'outbox/busy'
  | 'outbox/sign-in'
  | 'outbox/not-allowed'
  | 'outbox/not-understood'
  | 'outbox/bookkeeping';

/** What a screen asked of the outbox that cannot be done as asked. */
export type MisuseCode = 'outbox/id-taken' | 'outbox/no-such-entry' | 'outbox/no-reason';

/** Something was not kept or not done. Never thrown once the entry is safe on the disk. */
export class OutboxError extends Error {
  override name = 'OutboxError';

  constructor(
    readonly code: TroubleCode | MisuseCode,
    message: string,
    /** What was to be kept, with its id, so that keeping it again cannot keep it twice; null for other acts. */
    readonly draft: Draft | null = null,
    cause?: unknown,
  ) {
    super(message, { cause });
  }
}

/** The device has no room left. Reading and sending what it holds still works. */
export class StorageFullError extends OutboxError {
  override name = 'StorageFullError';

  constructor(message: string, draft: Draft | null = null, cause?: unknown) {
    super('outbox/storage-full', message, draft, cause);
  }
}
