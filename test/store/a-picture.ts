import { crc32, deflateSync } from 'node:zlib';

/** A grey PNG of the given size, made as W3C PNG (third edition) says, chunk by chunk. */
export function aPng(widthPx: number, heightPx: number): Buffer {
  const size = Buffer.alloc(13);
  size.writeUInt32BE(widthPx, 0);
  size.writeUInt32BE(heightPx, 4);
  size[8] = 8; // bits a sample; the rest zero: grey, deflate, no filter, not interlaced
  const rows = deflateSync(Buffer.alloc((widthPx + 1) * heightPx, 0x80));
  const signature = Buffer.from('89504e470d0a1a0a', 'hex');
  return Buffer.concat([
    signature,
    chunk('IHDR', size),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/**
 * The beginning of a JPEG of the given size (ITU-T T.81, B.1): application and comment segments, fill bytes,
 * then the frame header `frame` (0xc0 baseline, 0xc2 progressive), and the start of a scan.
 */
export function aJpeg(widthPx: number, heightPx: number, frame = 0xc0): Buffer {
  const size = Buffer.alloc(15);
  size[0] = 8; // bits a sample
  size.writeUInt16BE(heightPx, 1);
  size.writeUInt16BE(widthPx, 3);
  return Buffer.concat([
    Buffer.from('ffd8', 'hex'),
    segment(0xe0, Buffer.from('JFIF\0\x01\x02\0\0\x01\0\x01\0\0', 'latin1')),
    segment(0xfe, Buffer.from('a comment with \xff\xc0 in it', 'latin1')),
    Buffer.from('ffff', 'hex'),
    segment(0xdb, Buffer.alloc(65)),
    segment(0xc4, Buffer.alloc(20)),
    segment(frame, size),
    segment(0xda, Buffer.alloc(10)),
    Buffer.from('00ffd9', 'hex'),
  ]);
}

function segment(marker: number, data: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(data.length + 2, 2);
  return Buffer.concat([head, data]);
}
