import { MathsInputError } from '../check';

/** Depth of a full thread on diameter, as a multiple of the pitch, by both customs. */
export const fullDepth = {
  /** 5H/8 of the basic profile on each side: what ISO 68-1 calls full. */
  basic: (1.25 * Math.sqrt(3)) / 2,
  /** 3H/4: the custom of American tap-drill tables. */
  american: (1.5 * Math.sqrt(3)) / 2,
} as const;

/**
 * How much thread a tapping drill leaves, percent of a full thread, by both
 * customs: say which one is shown.
 *
 * percent = 100 (major - drill) / (k P), k = 1.082532 for the basic depth and
 * 1.299038 for American tables, where 75 % is 90 % here. Sixty-degree threads,
 * any one unit. Above 100 % the tap has to form metal that is not there to cut.
 *
 * Source: [iso-68-1]; [machinerys-handbook-31] for the American custom.
 *
 * @throws {MathsInputError} `thread-engagement/size`
 *
 * @example
 * threadEngagement({ major: 10, pitch: 1.5, drill: 8.5 }); // basicPercent 92.4, americanPercent 77.0
 */
export function threadEngagement(hole: { major: number; pitch: number; drill: number }): {
  basicPercent: number;
  americanPercent: number;
} {
  const { major, pitch, drill } = hole;
  if (![major, pitch, drill].every((size) => size > 0 && size < Infinity)) {
    throw new MathsInputError(
      'thread-engagement/size',
      `threadEngagement requires sizes above zero, got ${major} x ${pitch} and drill ${drill}`,
    );
  }
  const percent = (full: number) => (100 * (major - drill)) / (full * pitch);
  return { basicPercent: percent(fullDepth.basic), americanPercent: percent(fullDepth.american) };
}
