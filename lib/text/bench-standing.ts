import type { SlipKind } from '@/lib/schema/reading';

/** What is known of one reading, for a line of a list. */
export function standingWords(facts: {
  state: 'counted' | 'held' | 'struck';
  heldAs: SlipKind | null;
  reason: string;
  typed: string;
  firstTyped: string | null;
  gauge: string;
  time: string;
}): string {
  const { state, heldAs, reason, typed, firstTyped, gauge, time } = facts;
  const stands =
    state === 'struck'
      ? `struck out${reason === '' ? '' : `, ${reason}`}`
      : state === 'held'
        ? `held: ${heldAs ?? 'in doubt'}`
        : '';
  const was =
    firstTyped === null
      ? `typed ${typed.trim()}`
      : `typed ${typed.trim()}, first ${firstTyped.trim()}`;
  return [stands, was, gauge, time].filter((part) => part !== '').join(', ');
}
