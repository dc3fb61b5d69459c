import type { PieceFate } from '@/lib/schema/fit';
import type { Piece } from '@/lib/schema/part';

/** Why a piece takes no part in a fit any more: struck out, scrapped, or waiting for a sleeve; null while it does. */
export function pieceFate({ struckAt, fate }: Pick<Piece, 'struckAt' | 'fate'>): PieceFate | null {
  return struckAt === null ? (fate ?? null) : 'struck';
}
