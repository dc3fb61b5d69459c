import type { JobView } from '@/lib/rules/job-view';
import { placeWords } from '@/lib/text/bench-place';
import { unkeptFile } from '@/lib/text/unkept-file';
import { saveFile } from '../closer/save-file';
import type { Fresh } from './use-fresh';

/** Saves what the disk would not take where the person can put it: a file needs no room in this browser. */
export function saveUnkept({ sheet }: JobView, failed: readonly Fresh[]): void {
  const lines = failed.map(({ entry, draft }) => {
    const reading =
      entry.kind === 'reading'
        ? entry.row
        : sheet.readings.find(({ id }) => id === entry.row.readingId);
    const feature = sheet.features.find(({ id }) => id === reading?.featureId);
    return {
      deviceTime: draft.deviceTime ?? '',
      kind: entry.kind === 'reading' ? 'reading' : entry.row.kind,
      mark: sheet.pieces.find(({ id }) => id === reading?.pieceId)?.mark ?? '',
      feature: feature?.name ?? '',
      place: reading === undefined || feature === undefined ? '' : placeWords(reading, feature),
      text: (entry.kind === 'reading' ? entry.row.text : entry.row.text) ?? reading?.text ?? '',
      unit: entry.row.unit ?? reading?.unit ?? '',
      id: draft.id,
    };
  });
  const name = `${sheet.job.name} not kept.txt`.replace(/[^\p{L}\p{N}.]+/gu, '-').toLowerCase();
  saveFile(name, new Blob([unkeptFile(lines)], { type: 'text/plain' }));
}
