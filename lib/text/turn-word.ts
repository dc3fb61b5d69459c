/**
 * What moves along the axis of a run: a piece; a turn where a piece has several of the features, each of
 * them made in its own turn.
 */
export function turnWord(features: readonly { partId: string }[]): 'piece' | 'turn' {
  return new Set(features.map(({ partId }) => partId)).size === features.length ? 'piece' : 'turn';
}
