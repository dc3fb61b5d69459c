'use client';

import type { Place } from '@/lib/rules/entry-plan';
import { useJob } from '../job/job-provider';
import { ChooseDialog } from './choose-dialog';
import { DeviceDialog } from './device-dialog';
import { KeysDialog } from './keys-dialog';
import { ReadingDialog } from './reading-dialog';
import { TrayDialog } from './tray-dialog';
import type { Bench } from './use-bench';
import type { Person } from './use-person';

/** What lies over the bench. */
export type Over =
  | { kind: 'choose' }
  | { kind: 'keys' }
  | { kind: 'device' }
  | { kind: 'tray' }
  | { kind: 'reading'; place: Place; mistypedId?: string };

export type BenchOverProps = {
  over: Over;
  bench: Bench;
  person: Person;
  onClose: () => void;
  onListKeys: () => void;
  onDevice: () => void;
  onTray: () => void;
};

/** The one list or form that lies over the bench. */
export function BenchOver(props: BenchOverProps) {
  const { over, bench, person, onClose, onListKeys, onDevice, onTray } = props;
  const { outbox } = useJob();
  switch (over.kind) {
    case 'choose':
      return <ChooseDialog bench={bench} person={person} onClose={onClose} onDevice={onDevice} />;
    case 'keys':
      return <KeysDialog onClose={onClose} />;
    case 'device':
      return <DeviceDialog onClose={onClose} onListKeys={onListKeys} onTray={onTray} />;
    case 'tray':
      return <TrayDialog tray={outbox.tray} onClose={onClose} />;
    case 'reading':
      return (
        <ReadingDialog
          bench={bench}
          place={over.place}
          {...(over.mistypedId === undefined ? {} : { mistypedId: over.mistypedId })}
          personId={person.id}
          onClose={onClose}
        />
      );
  }
}
