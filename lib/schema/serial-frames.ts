/** Data bits, parity (none, even, odd) and stop bits of a serial line, as makers write them. */
export const serialFrames = [
  '8N1',
  '8N2',
  '8E1',
  '8E2',
  '8O1',
  '8O2',
  '7N1',
  '7N2',
  '7E1',
  '7E2',
  '7O1',
  '7O2',
] as const;
export type SerialFrame = (typeof serialFrames)[number];
