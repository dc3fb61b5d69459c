import type { Cut } from '@/lib/schema/fit';
import { cellKey, type Cell } from '../cells';
import { cutPlaces } from './cut-places';

type Facts = {
  cuts: readonly Cut[];
  /** The readings of a feature of a piece; undefined where there are none. */
  cellOf: (pieceId: string, featureId: string) => Pick<Cell, 'readings' | 'earlier'> | undefined;
  /** The number in the book of a reading of the job. */
  seqOf: (readingId: string) => number | undefined;
};

/**
 * The cuts of several pieces that were not struck out, as they were made, by what the book says and by no clock.
 *
 * A cut was made before the first reading that came after it, whatever became of that reading. One that
 * nothing was read after is put before the next cut that its own device noted, by the device's running
 * numbers, else after all others. Cuts of one feature of one piece keep the order of their ordinals.
 *
 * Cost: O(cuts log cuts + readings of the cells they are of); a cut never measured looks at all others.
 */
export function cutsInOrder({ cuts, cellOf, seqOf }: Facts): Cut[] {
  const byCell = new Map<string, Cut[]>();
  for (const cut of cuts) {
    if ((cut.struckAt ?? null) !== null) continue;
    const key = cellKey(cut.pieceId, cut.featureId);
    const known = byCell.get(key);
    if (known === undefined) byCell.set(key, [cut]);
    else known.push(cut);
  }
  const cells = [...byCell.values()].map((own) => {
    own.sort((a, b) => a.ordinal - b.ordinal);
    const cell = cellOf(own[0]!.pieceId, own[0]!.featureId);
    const seqs = [...(cell?.earlier ?? []), ...(cell?.readings ?? [])].map(({ seq }) => seq);
    const places = cutPlaces(own, seqOf);
    return own.map((cut, i) => ({ cut, at: seqs.find((seq) => seq > places[i]!) ?? null }));
  });
  const read = cells.flat().filter(({ at }) => at !== null);
  const placed = cells.flatMap((own) => {
    let reached = 0;
    return own.map(({ cut, at }) => {
      reached = Math.max(reached, at ?? beforeNext(cut, read));
      return { cut, at: reached };
    });
  });
  return placed.sort((a, b) => (a.at === b.at ? 0 : a.at - b.at)).map(({ cut }) => cut);
}

/** A place just before the next measured cut of the same device; after all where it has noted none since. */
function beforeNext(cut: Cut, read: readonly { cut: Cut; at: number | null }[]): number {
  const device = cut.deviceId ?? null;
  const later = read.filter(
    (one) => device !== null && one.cut.deviceId === device && numberOf(one.cut) > numberOf(cut),
  );
  return Math.min(...later.map(({ at }) => at! - 0.5));
}

function numberOf({ deviceSeq }: Cut): number {
  return deviceSeq ?? 0;
}
