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

/** Whether a size is a diameter: a dial may count its radius then, and metal comes off twice. */
export function isOnDiameter(kind: FeatureKind): boolean {
  return kind === 'bore' || kind === 'outside';
}
