/** What a feature can be, in the order a list offers it. No zod here: screens read it. */
export const featureKinds = [
  'bore',
  'slot',
  'outside',
  'width',
  'length',
  'depth',
  'step',
  'position',
  'roundness',
  'run-out',
  'straightness',
] as const;
export type FeatureKind = (typeof featureKinds)[number];
