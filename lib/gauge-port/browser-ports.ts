import type { PortHouse } from './port';
import { webSerialHouse, type WebSerial } from './web-serial';

let house: PortHouse | null = null;

/**
 * The serial ports of this page, or null where the browser has none. One for all who ask, so that a port is
 * not opened while it is still being closed.
 */
export function browserPorts(): PortHouse | null {
  const { serial } = navigator as { serial?: WebSerial };
  if (serial === undefined) return null;
  return (house ??= webSerialHouse(serial));
}
