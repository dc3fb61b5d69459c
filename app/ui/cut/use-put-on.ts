'use client';

import { useState } from 'react';
import { foretold, type CutView } from '@/lib/rules/cuts/cut-view';
import type { ExpectedSize } from '@/lib/rules/cuts/expected-size';
import { askedFrom, type Slide } from '@/lib/rules/cuts/slide';

/** What will be put on the dial: as proposed, or as many divisions as the person says. */
export type OnDial = {
  divisions: number;
  dialPm: number;
  askedPm: number;
  expected: ExpectedSize | null;
  /** The person's own figure, not the one proposed. */
  isOwn: boolean;
};

/** The amount on the dial; a person may say more or fewer divisions, until the next cut is proposed. */
export function usePutOn(cut: CutView, slide: Slide | null) {
  const proposed = cut.advice.kind === 'cut' ? cut.advice : null;
  // A new size, or another proposal, is a new question: the person's own figure was for the old one.
  const key = JSON.stringify([cut.aim.now?.valuePm, proposed?.divisions, slide]);
  const [own, setOwn] = useState<{ key: string; divisions: number } | null>(null);
  const chosen = own !== null && own.key === key ? own.divisions : null;
  const isCutting = cut.advice.kind === 'cut' || cut.advice.kind === 'spring';
  const divisions = chosen ?? proposed?.divisions ?? 0;
  const isOwn = chosen !== null && chosen !== (proposed?.divisions ?? 0);
  const step = (by: 1 | -1) => {
    if (slide === null || !isCutting) return;
    setOwn({ key, divisions: Math.max(0, divisions + by) });
  };
  if (slide === null || !isCutting || divisions === 0) return { onDial: null, step };
  const dialPm = divisions * slide.divisionPm;
  const askedPm = askedFrom(dialPm, slide);
  const onDial: OnDial = {
    divisions,
    dialPm,
    askedPm,
    expected: isOwn ? foretold(cut.aim, cut.learnt, askedPm) : cut.expected,
    isOwn,
  };
  return { onDial, step };
}
