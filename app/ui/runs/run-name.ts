import type { JobView } from '@/lib/rules/job-view';
import type { RunView } from '@/lib/rules/run-view';
import { runTitle } from '@/lib/text/run-title';

/** A run by its part and its feature, and how many more there are alike. */
export function runName(view: JobView, run: RunView): string {
  const part = view.parts.find((candidate) => candidate.part.id === run.feature.partId);
  return runTitle(part?.part.name ?? '', run.features);
}
