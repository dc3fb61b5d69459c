/** Size and text of the labels drawn in B612. Its 400 and 700 have the same advances. */
export type Lettering = { text: string; sizePx: number };

/**
 * Width of a line of B612, px: the sum of its advances.
 *
 * Digits are all 0.65 em wide, so figures are exact; a character outside the table counts as 0.65 em too.
 * Advances are those of the `hmtx` table of b612-latin-400-normal.woff (@fontsource/b612 5.3.0), and the
 * test reads them back from that file. No kerning: B612 has none between figures.
 *
 * @example
 * textWidth({ text: '18.000', sizePx: 13 }); // 5 x 8.45 + 3.9 = 46.15
 */
export function textWidth({ text, sizePx }: Lettering): number {
  let thousandths = 0;
  for (const character of text) thousandths += advances.get(character) ?? digitAdvance;
  return (thousandths * sizePx) / 1000;
}

const digitAdvance = 650;

/** Thousandths of an em, by the characters that share them. */
const widths: Record<number, string> = {
  200: "'|",
  250: ',;',
  300: '.:Iij°',
  350: ' !l',
  400: '"frt',
  450: '()-J[s',
  500: '=]cz',
  525: 'a',
  550: '$/?FLS\\_`ekvxy\u2212',
  600: '+CEKPTYZbdghnopqu}±',
  650: '0123456789<>ABDGRVXµ',
  700: '&HU',
  750: 'N^w~',
  800: 'OQ×',
  850: '#',
  900: '%Mm',
  950: 'W',
  1000: '@',
};

const advances = new Map(
  Object.entries(widths).flatMap(([width, characters]) =>
    [...characters].map((character) => [character, Number(width)] as const),
  ),
);
