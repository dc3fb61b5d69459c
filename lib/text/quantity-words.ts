/** What is wrong with a typed number that is no length. */
export type QuantityTrouble = {
  kind: 'error';
  code: 'empty' | 'not-a-number' | 'two-ways' | 'too-fine' | 'unit';
  character: string;
};

/** Why a typed figure was not taken; `such` is an example of a right one. */
export function quantityWords(trouble: QuantityTrouble, text: string, such: string): string {
  switch (trouble.code) {
    case 'empty':
      return `Type ${such}.`;
    case 'two-ways':
      return `${text} can be read in two ways. Type it without the mark that groups the figures.`;
    case 'too-fine':
      return `"${text}" is finer than this notebook keeps. Type fewer figures.`;
    case 'unit':
      return `"${trouble.character}" is no unit known here. Type ${such}.`;
    default: {
      const at = trouble.character === '' ? '' : ` at "${trouble.character}"`;
      return `"${text}" is not a figure${at}. Type ${such}.`;
    }
  }
}
