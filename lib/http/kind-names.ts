import type { ThingKind } from '@/lib/schema/change';

/** What the address of each kind of thing is called, below /api/v1. */
export const kindNames = {
  job: 'jobs',
  part: 'parts',
  piece: 'pieces',
  feature: 'features',
  gauge: 'gauges',
  person: 'people',
  fit: 'fits',
  pair: 'pairs',
  cut: 'cuts',
  run: 'runs',
  runEvent: 'run-events',
  departure: 'departures',
  setting: 'settings',
  picture: 'pictures',
  material: 'materials',
  fitRule: 'fit-rules',
} as const satisfies Record<ThingKind, string>;
