/** Names in a row: "P3", "P3 and P4", "P3, P4 and P5"; past six of them how many there are more. */
export function listWords(names: readonly string[]): string {
  const most = 6;
  if (names.length > most) {
    return `${names.slice(0, most).join(', ')} and ${names.length - most} more`;
  }
  const [last, ...before] = names.toReversed();
  return before.length === 0 ? (last ?? '') : `${before.toReversed().join(', ')} and ${last}`;
}
