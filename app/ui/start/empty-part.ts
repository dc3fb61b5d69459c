import type { DraftFeature, DraftPart } from '@/lib/rules/draft-job';

/** A part nobody has written anything of yet, with one line for its first feature. */
export function emptyPart(newKey: () => string): DraftPart {
  return {
    key: newKey(),
    name: '',
    quantity: '1',
    material: '',
    prefix: '',
    features: [emptyFeature(newKey)],
  };
}

/** An empty line for a feature. */
export function emptyFeature(newKey: () => string): DraftFeature {
  return { key: newKey(), drawn: '', kind: null, name: '', places: null };
}
