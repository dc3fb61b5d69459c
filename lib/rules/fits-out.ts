import type { Feature } from '@/lib/schema/feature';
import type { Fit } from '@/lib/schema/fit';
import type { JobSheet } from '@/lib/schema/sheet';

/** A fit that no sheet shows, and why. */
export type FitOut =
  | { fit: Fit; why: 'struck' }
  /** It counts, but a feature it ties was struck out. */
  | { fit: Fit; why: 'feature struck'; feature: Feature };

/** The fits of a job that are out: struck out themselves, or tied to a feature that is. */
export function fitsOut({ fits, features }: Pick<JobSheet, 'fits' | 'features'>): FitOut[] {
  return fits.flatMap((fit): FitOut[] => {
    if (fit.struckAt !== null) return [{ fit, why: 'struck' }];
    const feature = features.find(
      ({ id, struckAt }) =>
        struckAt !== null && (id === fit.internalFeatureId || id === fit.externalFeatureId),
    );
    return feature === undefined ? [] : [{ fit, why: 'feature struck', feature }];
  });
}
