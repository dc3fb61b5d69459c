import { MathsInputError } from '../check';

/** Requires what every tolerance factor stands on: values, content and confidence. */
export function requireToleranceInputs(
  caller: string,
  code: string,
  n: number,
  content: number,
  confidence: number,
): void {
  if (!(Number.isInteger(n) && n >= 2)) {
    throw new MathsInputError(`${code}/too-few`, `${caller} requires two values or more, got ${n}`);
  }
  if (!(content > 0 && content < 1)) {
    throw new MathsInputError(
      `${code}/content`,
      `${caller} requires a content above 0 and below 1, got ${content}`,
    );
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new MathsInputError(
      `${code}/confidence`,
      `${caller} requires a confidence above 0 and below 1, got ${confidence}`,
    );
  }
}
