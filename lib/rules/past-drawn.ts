import type { Limits } from './verdict';

/**
 * Whether a target goes past what is drawn. Working limits that do are the rule where a piece is made to its
 * partner, and are not asked about; the target itself is a decision.
 */
export function isPastDrawn(targetPm: number, { lowerPm, upperPm }: Limits): boolean {
  return (lowerPm !== null && targetPm < lowerPm) || (upperPm !== null && targetPm > upperPm);
}
