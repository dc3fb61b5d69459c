import { countWord } from './drift-words';

/** A run by its part and its first feature, and how many more there are alike. */
export function runTitle(partName: string, features: readonly { name: string }[]): string {
  const others = features.length - 1;
  const more = others === 0 ? '' : ` and ${countWord(others)} alike`;
  return `${partName}, ${features[0]!.name.toLowerCase()}${more}`;
}
