import type { Fit } from '@/lib/schema/fit';
import { clearanceOf, type Clearance, type FitPiece } from './fit-view';

/** The clearance of two pieces that are both made; null while one has no size, or metal that is still to come off. */
export function madeClearance(internal: FitPiece, external: FitPiece, fit: Fit): Clearance | null {
  return internal.stillToCut || external.stillToCut ? null : clearanceOf(internal, external, fit);
}
