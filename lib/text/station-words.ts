/** What stands at a place to measure at, read aloud: "17.999, next". */
export function stationWords(
  text: string | null,
  state: 'empty' | 'counted' | 'held' | 'struck',
  isNext: boolean,
): string {
  const aside = state === 'held' ? ', held' : state === 'struck' ? ', struck out' : '';
  const reading = text === null ? 'not measured' : `${text}${aside}`;
  return isNext ? `${reading}, next` : reading;
}
