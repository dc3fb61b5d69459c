/** A caller broke a function's stated requirements. Never thrown for merely surprising data. */
export class MathsInputError extends RangeError {
  override name = 'MathsInputError';

  constructor(
    /** Stable key, `file/reason`; the words for the screen are looked up by it. */
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}
