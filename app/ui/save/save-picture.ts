import { saveFile } from '../closer/save-file';

/** Saves the charts drawn in a box as one PNG, one under the other, on the colour of the sheet. */
export function savePicture(box: HTMLElement | null, name: string): void {
  const drawn = [...(box?.querySelectorAll('canvas') ?? [])];
  const first = drawn[0];
  if (first === undefined) return;
  // On the colour of the sheet: a canvas is see-through.
  const picture = document.createElement('canvas');
  picture.width = Math.max(...drawn.map(({ width }) => width));
  picture.height = drawn.reduce((sum, { height }) => sum + height, 0);
  const pen = picture.getContext('2d')!;
  pen.fillStyle = getComputedStyle(first).getPropertyValue('--sheet') || '#ffffff';
  pen.fillRect(0, 0, picture.width, picture.height);
  let top = 0;
  for (const canvas of drawn) {
    pen.drawImage(canvas, 0, top);
    top += canvas.height;
  }
  picture.toBlob((blob) => {
    if (blob !== null) saveFile(`${name}.png`, blob);
  });
}
