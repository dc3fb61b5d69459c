import type { FeatureKind } from '@/lib/schema/feature';

/** A feature that something goes into. */
export function isInternal(kind: FeatureKind): boolean {
  return kind === 'bore' || kind === 'slot';
}

/** A feature that goes into something. */
export function isExternal(kind: FeatureKind): boolean {
  return kind === 'outside' || kind === 'width';
}
