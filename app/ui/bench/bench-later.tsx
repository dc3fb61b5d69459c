'use client';

import { Suspense, useEffect } from 'react';
import type { RunView } from '@/lib/rules/run-view';
import type { Gauge } from '@/lib/schema/gauge';
import type { BenchOverProps } from './bench-over';
import { comeLater } from './come-later';
import type { Bench } from './use-bench';
import { fetchCaught } from './use-caught';

const parts = {
  over: comeLater(() => import('./bench-over').then((one) => one.BenchOver)),
  gauges: comeLater(() => import('./gauge-list').then((one) => one.GaugeList)),
  zones: comeLater(() => import('./zone-note').then((one) => one.ZoneNote)),
  events: comeLater(() => import('../runs/event-row').then((one) => one.EventRow)),
  port: comeLater(() => import('./port-line').then((one) => one.default)),
  reasons: comeLater(() => import('./slip-reasons').then((one) => one.SlipReasons)),
  nothing: comeLater(() => import('./bench-nothing').then((one) => one.BenchNothing)),
};
const { over, gauges, zones, events, port, reasons, nothing } = parts;

/** What lies over the bench, out of the script that is needed to take a reading. */
export function BenchOverLater(props: BenchOverProps) {
  return (
    <Suspense fallback={null}>
      <over.Part {...props} />
    </Suspense>
  );
}

/** The gauges to choose from, while none is chosen. */
export function GaugeListLater(props: { bench: Bench; onChosen?: () => void }) {
  return (
    <Suspense fallback={null}>
      <gauges.Part {...props} />
    </Suspense>
  );
}

/** What the last piece of a run means by zones. */
export function ZoneNoteLater(props: { bench: Bench; onDone: () => void }) {
  return (
    <Suspense fallback={null}>
      <zones.Part {...props} />
    </Suspense>
  );
}

/** What happened to the machine, on a run. */
export function EventRowLater(props: { run: RunView; bench?: boolean; onDone?: () => void }) {
  return (
    <Suspense fallback={null}>
      <events.Part {...props} />
    </Suspense>
  );
}

/** The line of a gauge at a serial port. */
export function PortLineLater(props: { gauge: Gauge; onReading: (text: string) => void }) {
  return (
    <Suspense fallback={null}>
      <port.Part {...props} />
    </Suspense>
  );
}

/** Why a held reading counts after all. */
export function SlipReasonsLater(props: { onKeep: (reason: string) => void; onBack: () => void }) {
  return (
    <Suspense fallback={null}>
      <reasons.Part {...props} />
    </Suspense>
  );
}

/** In the place of a bench that has nothing to be measured. */
export function BenchNothingLater(props: { jobId: string }) {
  return (
    <Suspense fallback={null}>
      <nothing.Part {...props} />
    </Suspense>
  );
}

/** Fetches all of it when the page has nothing else to do, so that it opens at once and without a network too. */
export function useBenchSoon(): void {
  useEffect(() => {
    const soon = () => {
      void fetchCaught();
      for (const { fetchIt } of Object.values(parts)) void fetchIt();
    };
    if (typeof requestIdleCallback === 'undefined') {
      const timer = setTimeout(soon, soonMs);
      return () => clearTimeout(timer);
    }
    const idle = requestIdleCallback(soon, { timeout: soonMs });
    return () => cancelIdleCallback(idle);
  }, []);
}

const soonMs = 2000;
