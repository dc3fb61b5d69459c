/** One reference file as read from disk, handed to a topic beside the inputs of a case. */
export type ReferenceSet = {
  /** File name in the folder that is checked, for example `thermal.json`. */
  file: string;
  /** The whole file, parsed: head fields such as conventions and size ranges are read from here. */
  data: Record<string, unknown>;
  /** Another file of the same folder, parsed. */
  read(file: string): Record<string, unknown>;
};

/** What computes the figures of one topic. */
export type Topic = {
  /** The `topic` text at the head of the reference file. */
  topic: string;
  /**
   * Figures for one case, named like the fields of `expected` and of `published`.
   * Chosen by the names of the inputs (and by words such as `kind` among them), never by a case id.
   */
  answer(inputs: Record<string, unknown>, set: ReferenceSet): Record<string, unknown>;
};

/** An input that is there; a set may write null for one that is not. */
export function isGiven<Value>(value: Value): value is NonNullable<Value> {
  return value !== undefined && value !== null;
}
