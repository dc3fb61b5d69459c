'use client';

import type { RunView } from '@/lib/rules/run-view';
import { Panel } from '../primitives/panel';
import { EventForm } from './event-form';

type Props = { run: RunView; onDone: () => void };

/** An event with all that can be said of it; the row under the chart notes the plain ones in one tap. */
export function NoteEvent({ run, onDone }: Props) {
  return (
    <Panel title="What happened?">
      <p className="t-sentence">
        A new insert, a moved offset or a new chucking starts the line afresh.
      </p>
      <EventForm run={run} onDone={onDone} />
    </Panel>
  );
}
