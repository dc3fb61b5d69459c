import type { JobView } from '@/lib/rules/job-view';
import type { RunView } from '@/lib/rules/run-view';
import { countWord } from '@/lib/text/drift-words';

/** A run by its part and its feature, and how many more there are alike. */
export function runName(view: JobView, run: RunView): string {
  const part = view.parts.find((candidate) => candidate.part.id === run.feature.partId);
  const others = run.features.length - 1;
  const more = others === 0 ? '' : ` and ${countWord(others)} alike`;
  return `${part?.part.name ?? ''}, ${run.feature.name.toLowerCase()}${more}`;
}
