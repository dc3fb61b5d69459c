import { counted } from './cells';
import type { OddPiece } from './odd-pieces';
import type { Standing } from './standing';

/**
 * The counted readings that make a piece odd: those nearer to where the piece stands than to where the line
 * puts it, or beyond. One that was measured again and lies on the line is not among them.
 */
export function oddReadings({ point, offPm, expectedPm }: OddPiece): Standing[] {
  const linePm = point.size.valuePm - (point.valuePm - expectedPm);
  const isOff = ({ valuePm }: Standing) =>
    (valuePm - linePm) * Math.sign(offPm) > Math.abs(offPm) / 2;
  return counted(point.cell.readings).filter(isOff);
}
