'use client';

import { dialUnit } from '@/lib/rules/cuts/slide';
import type { RunView } from '@/lib/rules/run-view';
import type { ZoneRun } from '@/lib/rules/zone-run';
import type { RunEventKind } from '@/lib/schema/run';
import { eventWords } from '@/lib/text/event-words';
import { offsetFigures } from '@/lib/text/offset-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { useEvent } from './use-event';
import styles from './zones.module.css';

type Props = { run: RunView; zones: ZoneRun; onDone?: () => void };

/** What was done about a stop, noted in one press: the move as it was advised, or something else. */
export function ZoneActs({ run, zones, onDone }: Props) {
  const { chosen } = useJob();
  const { note, trouble, busy } = useEvent(run);
  if (zones.state !== 'stop') return null;
  const { move } = zones;
  const moved =
    move === null ? null : offsetFigures(move, dialUnit(run.run, chosen.unit), chosen).offset;
  return (
    <div className={styles.acts}>
      {move !== null && moved !== null && (
        <Button kind="warm" disabled={busy} onClick={() => void noteDone('offset moved')}>
          Moved {moved}
        </Button>
      )}
      {(['insert changed', 're-chucked'] as const).map((kind) => (
        <Button key={kind} disabled={busy} onClick={() => void noteDone(kind)}>
          {eventWords({ kind, note: '', at: '' }).title}
        </Button>
      ))}
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </div>
  );

  async function noteDone(kind: RunEventKind) {
    const done = await note(kind, {
      afterOrdinal: zones.steps.at(-1)?.piece.ordinal ?? 0,
      ...(kind === 'offset moved'
        ? { offsetPm: move?.onDiameterPm ?? null, offsetDial: run.run.dial }
        : {}),
    });
    if (done) onDone?.();
  }
}
