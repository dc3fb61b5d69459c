'use client';

import { useEffect, useState } from 'react';
import { lessonPauseMs, teachGauge, type Arrival, type Lesson } from '@/lib/rules/teach-gauge';
import type { Gauge } from '@/lib/schema/gauge';

/** What has come from a gauge so far, and what it says of how it sends. */
export function useLesson(gauge: Gauge): {
  lesson: Lesson;
  hear: (arrivals: readonly Arrival[]) => void;
  again: () => void;
} {
  const [arrivals, setArrivals] = useState<readonly Arrival[]>([]);
  const [nowMs, setNowMs] = useState(0);
  const lesson = teachGauge(arrivals, gauge, nowMs);
  const lastAtMs = arrivals.at(-1)?.atMs ?? null;

  // A message without an end is over when nothing follows it.
  useEffect(() => {
    if (lastAtMs === null) return;
    const timer = setTimeout(() => setNowMs(lastAtMs + lessonPauseMs), lessonPauseMs);
    return () => clearTimeout(timer);
  }, [lastAtMs]);

  return {
    lesson,
    hear: (more) => setArrivals((old) => (lesson.kind === 'waiting' ? [...old, ...more] : old)),
    again() {
      setArrivals([]);
      setNowMs(0);
    },
  };
}
