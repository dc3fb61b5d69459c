import { dialUnit } from '@/lib/rules/cuts/slide';
import type { RunView } from '@/lib/rules/run-view';
import { steadyOffset } from '@/lib/rules/steady-offset';
import { zoneRun } from '@/lib/rules/zone-run';
import { driftWords } from '@/lib/text/drift-words';
import { steadyWords } from '@/lib/text/run-advice-words';
import type { Shown } from '@/lib/text/shown-size';
import { byZonesWords, zoneWords } from '@/lib/text/zone-words';

/**
 * What a run says to do, in words on the sheet, for those who cannot see the chart, and in a line for the board;
 * `decide` where something has to be done. By zones the zones alone say it: moving for the drift as well would be moving too often.
 */
export function runSays(
  run: RunView,
  shown: Shown,
): { title: string; says: string; summary: string; decide: boolean } {
  const zones = run.run.zones ? zoneRun(run) : null;
  if (zones !== null) {
    const words = zoneWords({ ...run, zones, dialUnit: dialUnit(run.run, shown.unit) }, shown);
    return { ...words, summary: byZonesWords(words.title) };
  }
  const steady = steadyOffset(run);
  if (steady !== null) return { ...steadyWords(steady.side), decide: true };
  return { ...driftWords(run, shown), decide: run.actAfter !== null };
}
