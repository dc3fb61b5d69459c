'use client';

import { useMemo } from 'react';
import { lastSlide } from '@/lib/rules/cuts/last-slide';
import type { CutSaid } from '@/lib/rules/cuts/cut-view';
import type { Slide } from '@/lib/rules/cuts/slide';
import type { CutChange } from '@/lib/schema/fit';
import type { JobView } from '@/lib/rules/job-view';
import { useMemory } from '../bench/use-memory';
import type { CellAt } from './cut-switch';

export type CutSaying = {
  said: CutSaid;
  /** What the dial reads now, where somebody said so; else it is set to nothing before each cut. */
  dialAtPm: number | null;
  saySlide: (slide: Slide) => void;
  sayLap: (pm: number) => void;
  sayChanged: (changed: CutChange | null) => void;
  sayWarm: (milliC: number | null) => void;
  sayDialAt: (pm: number | null) => void;
};

/**
 * What the person at this machine has said and no reading tells. The slide is that of this device, which
 * stands beside the machine; until one is said here, it is the one the last cut of the job was put on with.
 */
export function useCutSaid(view: JobView, { pieceId, featureId }: CellAt): CutSaying {
  const jobId = view.sheet.job.id;
  const [slideWord, saySlideWord] = useMemory('slide');
  const [lapWord, sayLapWord] = useMemory(`lap:${jobId}:${featureId}`);
  // A tool is changed for every piece that follows, not for the one on the machine alone.
  const [changedWord, sayChangedWord] = useMemory(`changed:${featureId}`);
  const [warmWord, sayWarmWord] = useMemory(`warm:${pieceId}`);
  const [dialWord, sayDialWord] = useMemory('dial-at');
  const lastReadingId = view.cell(pieceId, featureId).readings.at(-1)?.id ?? '';
  return useMemo(() => {
    const warm = parsed<{ milliC: number; readingId: string }>(warmWord);
    const dialAt = parsed<number>(dialWord);
    return {
      said: {
        slide: parsed<Slide>(slideWord) ?? lastSlide(view.sheet.cuts),
        lapPm: parsed<number>(lapWord) ?? 0,
        changed: parsed<CutChange>(changedWord),
        // A temperature belongs to the reading it was taken with.
        temperatureMilliC: warm !== null && warm.readingId === lastReadingId ? warm.milliC : null,
      },
      dialAtPm: dialAt,
      saySlide: (slide) => saySlideWord(JSON.stringify(slide)),
      sayLap: (pm) => sayLapWord(JSON.stringify(pm)),
      sayChanged: (changed) => sayChangedWord(JSON.stringify(changed)),
      sayWarm: (milliC) =>
        sayWarmWord(JSON.stringify(milliC === null ? null : { milliC, readingId: lastReadingId })),
      sayDialAt: (pm) => sayDialWord(JSON.stringify(pm)),
    };
  }, [
    view,
    lastReadingId,
    slideWord,
    lapWord,
    changedWord,
    warmWord,
    dialWord,
    saySlideWord,
    sayLapWord,
    sayChangedWord,
    sayWarmWord,
    sayDialWord,
  ]);
}

function parsed<Value>(word: string | null): Value | null {
  try {
    return JSON.parse(word ?? 'null') as Value | null;
  } catch {
    return null;
  }
}
