import type { RefObject } from 'react';
import { saveFile } from '../closer/save-file';
import { Button } from '../primitives/button';
import { savePicture } from './save-picture';

type Props = {
  /** What the file is of: its name is made of these words. */
  of: string;
  /** What the charts are drawn in. */
  box: RefObject<HTMLElement | null>;
  svg: () => string;
  csv: () => string;
};

/** Takes a chart away as a picture, a drawing or figures. */
export function SaveButtons({ of, box, svg, csv }: Props) {
  const name = of.replace(/[^\p{L}\p{N}]+/gu, '-').toLowerCase();
  const save = (end: string, type: string, text: string) =>
    saveFile(`${name}.${end}`, new Blob([text], { type }));
  return (
    <>
      <Button onClick={() => savePicture(box.current, name)}>Save as PNG</Button>
      <Button onClick={() => save('svg', 'image/svg+xml', svg())}>Save as SVG</Button>
      <Button onClick={() => save('csv', 'text/csv', csv())}>Save as CSV</Button>
    </>
  );
}
