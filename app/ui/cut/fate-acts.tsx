'use client';

import type { Cell } from '@/lib/rules/cells';
import type { Piece } from '@/lib/schema/part';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { useCutSwitch } from './cut-switch';
import { useKeepCut } from './use-keep-cut';

type Props = { piece: Piece; cell: Cell; personId: string | null };

/** What can still be done with a piece that has left the pairing: take it back, sleeve it, make another. */
export function FateActs({ piece, cell, personId }: Props) {
  const { view } = useJob();
  const ways = useCutSwitch();
  const { change, trouble, busy } = useThings();
  const { take, trouble: notKept } = useKeepCut();
  const part = view.sheet.parts.find(({ id }) => id === piece.partId)!;
  const isFull =
    view.sheet.pieces.filter((one) => one.partId === part.id && one.struckAt === null).length <=
    part.quantity;

  async function sleeved(): Promise<void> {
    // What was read before the sleeve tells an old size: metal is on again, and learning begins afresh.
    const noted =
      cell.readings.length === 0 ||
      (await take(cell, personId, { spring: true, askedPm: 0, changed: 'sleeve' }));
    if (noted && (await change('piece', piece.id, { version: piece.version, fate: null }))) {
      ways?.toBench(cell);
    }
  }

  return (
    <>
      {piece.fate === 'sleeve' ? (
        <Button kind="main" bench disabled={busy} onClick={() => void sleeved()}>
          The sleeve is in, measure
        </Button>
      ) : (
        isFull && (
          <Button
            kind="main"
            bench
            disabled={busy}
            onClick={() =>
              void change('part', part.id, { version: part.version, quantity: part.quantity + 1 })
            }
          >
            Make another in its place
          </Button>
        )
      )}
      <Button
        bench
        disabled={busy}
        onClick={() => void change('piece', piece.id, { version: piece.version, fate: null })}
      >
        Put {piece.mark} back as it was
      </Button>
      {trouble === null && notKept === null ? null : <p role="alert">{trouble ?? notKept}</p>}
    </>
  );
}
