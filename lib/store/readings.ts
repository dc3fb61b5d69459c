import type { z } from 'zod';
import type { Batch, Outcome } from '@/lib/schema/reading';
import { correctionKind, readingKind } from './entry-kinds';
import { keepEntries } from './keep-entries';

/** Keeps the readings of a batch; see keepEntries. */
export function keepReadings(batch: z.infer<typeof Batch>): Promise<Outcome[]> {
  return keepEntries(readingKind, batch);
}

/** Keeps the corrections of a batch; one may come before the reading it names. See keepEntries. */
export function keepCorrections(batch: z.infer<typeof Batch>): Promise<Outcome[]> {
  return keepEntries(correctionKind, batch);
}
