/** "second", "21st": one in so many, as a person says it. */
export function ordinalWord(count: number): string {
  const words = ['', '', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];
  if (words[count] !== undefined) return words[count];
  const teen = count % 100 >= 11 && count % 100 <= 13;
  const end = teen ? 'th' : (['th', 'st', 'nd', 'rd'][count % 10] ?? 'th');
  return `${count}${end}`;
}
