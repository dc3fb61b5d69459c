/** The colours a chart is drawn in: those of look.md, resolved from the theme in force. */
export type Palette = {
  ground: string;
  sheet: string;
  ink: string;
  ink2: string;
  rule: string;
  hatch: string;
  blue: string;
  warm: string;
  band: string;
};

/** Ink on white: what a chart is drawn in before the theme is known, and on paper. */
export const paper: Palette = {
  ground: '#ffffff',
  sheet: '#ffffff',
  ink: '#000000',
  ink2: '#000000',
  rule: '#555555',
  hatch: '#777777',
  blue: '#000000',
  warm: '#000000',
  band: '#dddddd',
};

/** Reads the theme where an element stands. */
export function paletteOf(element: Element): Palette {
  const style = getComputedStyle(element);
  const read = (name: keyof Palette) => style.getPropertyValue(`--${name}`).trim() || paper[name];
  return {
    ground: read('ground'),
    sheet: read('sheet'),
    ink: read('ink'),
    ink2: read('ink2'),
    rule: read('rule'),
    hatch: read('hatch'),
    blue: read('blue'),
    warm: read('warm'),
    band: read('band'),
  };
}
