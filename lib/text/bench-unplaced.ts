/** Said beside texts that were typed and are no readings yet. */
export function unplacedWords(list: readonly { lacks: 'gauge' | 'answer' }[]): string {
  const it = list.length === 1 ? 'it' : 'each';
  return list.every(({ lacks }) => lacks === 'gauge')
    ? `Not kept yet: choose the gauge.`
    : `Not placed yet. Go to where ${it} belongs and press it:`;
}

/** How such a text is named; while readings are hidden, by its number alone. */
export function unplacedLabel(text: string, index: number, blind: boolean): string {
  return blind ? `no. ${index + 1}` : text.trim();
}

/** Asked where a feature has no gauge yet. */
export function whichGaugeWords(text: string): string {
  return `Which gauge is ${text.trim()} from? It is kept once you say.`;
}
