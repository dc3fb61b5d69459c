/** What a gauge can be, in the order a list offers it. No zod here: screens read it. */
export const gaugeKinds = [
  'micrometer',
  'caliper',
  'bore gauge',
  'depth gauge',
  'height gauge',
  'dial gauge',
  'plug gauge',
  'other',
] as const;
