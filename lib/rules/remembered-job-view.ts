import type { JobSheet } from '@/lib/schema/sheet';
import { emptyCellsMemory } from './cells-memory';
import { jobView, type JobView } from './job-view';

/**
 * `jobView` with a memory, for one job that is looked at again after each small change: it gives the same view as
 * `jobView` of the same sheet, whatever sheets it was given before, and its cost follows what changed.
 *
 * Sheets are told apart by reference: a list or a row in it that has changed must be another object.
 */
export function rememberedJobView(): (sheet: JobSheet) => JobView {
  let memory = emptyCellsMemory();
  return (sheet) => {
    try {
      return jobView(sheet, memory);
    } catch (error) {
      // What was left half done must not be built upon.
      memory = emptyCellsMemory();
      throw error;
    }
  };
}
