import type { FeatureKind } from '@/lib/schema/feature';
import type { z } from 'zod';
import { refused, type Refused } from './refused';

type Kind = { kind: z.infer<typeof FeatureKind> };

/** What makes a fit of these two features nonsense, or nothing. */
export function fitFault(
  internal: Kind | undefined,
  external: Kind | undefined,
): Refused | undefined {
  if (internal === undefined) return refused('no-such-feature', 'internalFeatureId');
  if (external === undefined) return refused('no-such-feature', 'externalFeatureId');
  if (internal.kind !== 'bore' && internal.kind !== 'slot') {
    return refused('not-internal', 'internalFeatureId');
  }
  return external.kind === 'outside' || external.kind === 'width'
    ? undefined
    : refused('not-external', 'externalFeatureId');
}
