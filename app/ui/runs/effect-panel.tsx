'use client';

import { useMemo } from 'react';
import { offsetEffect } from '@/lib/rules/offset-effect';
import type { RunView } from '@/lib/rules/run-view';
import { offsetEffectWords } from '@/lib/text/run-advice-words';
import { useJob } from '../job/job-provider';
import { Panel } from '../primitives/panel';

/** The last offset followed to its effect: what was to come out, and what did. */
export function EffectPanel({ run }: { run: RunView }) {
  const { chosen } = useJob();
  const effect = useMemo(() => offsetEffect(run), [run]);
  if (effect === null) return null;
  const { title, says, decide } = offsetEffectWords(effect, chosen);
  return (
    <Panel title={title} decide={decide} level={3}>
      <p className="t-sentence">{says}</p>
    </Panel>
  );
}
