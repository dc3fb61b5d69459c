import { dialUnit } from '@/lib/rules/cuts/slide';
import type { RunView } from '@/lib/rules/run-view';
import { steadyOffset } from '@/lib/rules/steady-offset';
import { zoneRun } from '@/lib/rules/zone-run';
import { driftWords } from '@/lib/text/drift-words';
import { steadyWords } from '@/lib/text/run-advice-words';
import type { Shown } from '@/lib/text/shown-size';
import { zoneWords } from '@/lib/text/zone-words';

/**
 * What a run says to do, in words on the sheet and for those who cannot see the chart; `decide` where something has
 * to be done. By zones the zones alone say it: moving for the drift as well would be moving too often.
 */
export function runSays(
  run: RunView,
  shown: Shown,
): { title: string; says: string; decide: boolean } {
  const zones = run.run.zones ? zoneRun(run) : null;
  if (zones !== null) {
    return zoneWords({ ...run, zones, dialUnit: dialUnit(run.run, shown.unit) }, shown);
  }
  const steady = steadyOffset(run);
  if (steady !== null) return { ...steadyWords(steady.side), decide: true };
  return { ...driftWords(run, shown), decide: run.actAfter !== null };
}
