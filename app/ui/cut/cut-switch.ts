'use client';

import { createContext, useContext } from 'react';

export type CellAt = { pieceId: string; featureId: string };

/** Goes from the Bench to the Cut screen of a piece, or back, in the page that is open: it needs no network. */
export type CutSwitch = { toCut: (cell: CellAt) => void; toBench: (cell: CellAt) => void };

export const CutSwitchContext = createContext<CutSwitch | null>(null);

/** Null where the page is neither. */
export function useCutSwitch(): CutSwitch | null {
  return useContext(CutSwitchContext);
}
