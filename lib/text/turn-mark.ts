/**
 * The mark of a turn of a run, which may be one beyond the batch: W18 after W16, and "turn 18" where a mark says
 * more than a number, as with several features of a piece.
 */
export function turnMark(
  turns: readonly { mark: string; ordinal: number }[],
  ordinal: number,
): string {
  const known = turns.find((turn) => turn.ordinal === ordinal)?.mark;
  if (known !== undefined) return known;
  const first = turns[0]?.mark ?? '';
  return /\d$/.test(first) ? `${first.replace(/\d+$/, '')}${ordinal}` : `turn ${ordinal}`;
}
