export type PictureHead = {
  mediaType: 'image/png' | 'image/jpeg';
  widthPx: number;
  heightPx: number;
};

const sideMaxPx = 20_000;

/**
 * The kind and size of a picture, from its first bytes: what a file is called or said to be is not asked.
 *
 * PNG: signature and IHDR chunk (W3C PNG, third edition, 5.2 and 11.2.1). JPEG: the first frame header
 * (ITU-T T.81, B.2.2), whichever coding it announces. Only the head is looked at; that the rest can be
 * drawn is not promised.
 *
 * @returns undefined where it is neither, is cut short, or has no size or more than 20 000 px a side
 */
export function pictureHead(bytes: Uint8Array): PictureHead | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const head = isPng(bytes) ? pngHead(view) : isJpeg(bytes) ? jpegHead(view) : undefined;
  return head !== undefined && fits(head.widthPx) && fits(head.heightPx) ? head : undefined;
}

function fits(sidePx: number): boolean {
  return sidePx >= 1 && sidePx <= sideMaxPx;
}

const pngSignature = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const ihdr = [0x49, 0x48, 0x44, 0x52];

function isPng(bytes: Uint8Array): boolean {
  return pngSignature.every((byte, i) => bytes[i] === byte);
}

function pngHead(view: DataView): PictureHead | undefined {
  const isWhole = view.byteLength >= 33 && view.getUint32(8) === 13;
  if (!isWhole || !ihdr.every((byte, i) => view.getUint8(12 + i) === byte)) return undefined;
  return { mediaType: 'image/png', widthPx: view.getUint32(16), heightPx: view.getUint32(20) };
}

function isJpeg(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;
}

/** Walks the marker segments up to the first frame header. */
function jpegHead(view: DataView): PictureHead | undefined {
  let at = 2;
  while (at + 9 <= view.byteLength && view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    if (marker === 0xff) {
      at += 1; // a fill byte before a marker
    } else if (standsAlone(marker)) {
      at += 2;
    } else if (isFrame(marker)) {
      const [heightPx, widthPx] = [view.getUint16(at + 5), view.getUint16(at + 7)];
      return { mediaType: 'image/jpeg', widthPx, heightPx };
    } else if (marker === 0xda || marker === 0xd9) {
      return undefined; // scan or end of the image before any frame
    } else {
      at += 2 + view.getUint16(at + 2);
    }
  }
  return undefined;
}

/** SOF0 to SOF15, less DHT, JPG and DAC, which share their range. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
}

function standsAlone(marker: number): boolean {
  return marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7);
}
