'use client';

import type { ChosenPair, FitView } from '@/lib/rules/fit-view';
import { freePairMark } from '@/lib/rules/free-pair-mark';
import { pairLook } from '@/lib/rules/pair-look';
import type { PairingPurpose } from '@/lib/schema/fit';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { decidePair } from './decide-pair';

/** What a person can decide about the pairs of a fit. Each is kept with who and when; true once it is kept. */
export function usePairActs(fit: FitView) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const who = () => ({ decidedAt: new Date().toISOString(), personId: chosen.personId });
  const look = (act: 'made final' | 'let stand', pair: ChosenPair) =>
    pairLook(view, fit, pair, {
      act,
      at: new Date().toISOString(),
      personId: chosen.personId,
    });

  return {
    trouble,
    busy,
    /** Keeps two pieces together or apart, or leaves them to the pairing again. */
    settle: (internalId: string, externalId: string, state: 'locked' | 'left out' | 'undone') =>
      decide(internalId, externalId, { state, ...who() }),
    makeFinal: (pair: ChosenPair) => {
      const { clearancePm, uncertaintyPm, ...rest } = look('made final', pair);
      return decide(pair.internalPieceId, pair.externalPieceId, {
        state: 'final',
        mark: freePairMark(fit, pair),
        clearancePm,
        uncertaintyPm,
        ...who(),
        looks: [{ ...rest, clearancePm, uncertaintyPm }],
      });
    },
    /** Looked at after something changed under it, and left as it is: what was recorded stays. */
    letStand: ({ pair, ...now }: ChosenPair) =>
      pair === null
        ? Promise.resolve(false)
        : change('pair', pair.id, {
            version: pair.version,
            looks: [...(pair.looks ?? []), look('let stand', { pair, ...now })],
          }),
    undo: ({ pair }: ChosenPair, reason: string) =>
      pair === null
        ? Promise.resolve(false)
        : change('pair', pair.id, { version: pair.version, state: 'undone', reason, ...who() }),
    markAs: ({ pair }: ChosenPair, mark: string) =>
      pair === null
        ? Promise.resolve(false)
        : change('pair', pair.id, { version: pair.version, mark }),
    leaveOut: (pieceId: string, out: boolean) => {
      const others = (fit.fit.leftOutPieceIds ?? []).filter((id) => id !== pieceId);
      const leftOutPieceIds = out ? [...others, pieceId] : others;
      return change('fit', fit.fit.id, { version: fit.fit.version, leftOutPieceIds });
    },
    choose: (purpose: PairingPurpose) =>
      change('fit', fit.fit.id, { version: fit.fit.version, purpose }),
  };

  function decide(internalPieceId: string, externalPieceId: string, fields: object) {
    const two = { internalPieceId, externalPieceId };
    return decidePair({ make, change }, view.sheet.pairs, fit.fit, two, { ...fields });
  }
}

export type PairActs = ReturnType<typeof usePairActs>;
