import { MathsInputError } from '../check';
import type { Pair } from './cost-matrix';

/** Measured pieces that are to be put together, lengths in whole picometres. */
export type PairQuestion = {
  /** Sizes of the bores, pm. */
  boresPm: readonly number[];
  /** Sizes of the shafts, pm. */
  shaftsPm: readonly number[];
  /** Clearances that a pair may have, pm; below zero is interference. */
  minPm: number;
  maxPm: number;
  aimPm: number;
  /** Pairs that stay together whatever their clearance, as [bore, shaft]. */
  locked?: readonly Pair[];
  /** Pairs that may not be, as [bore, shaft]. */
  forbidden?: readonly Pair[];
  /** Pieces that take no part. */
  leftOut?: { bores?: readonly number[]; shafts?: readonly number[] };
};

/** The pieces that are free to be paired, and what each possible pair would be. */
export type PairProblem = {
  /** Pieces in play that are not locked, by their index in the question. */
  freeBores: number[];
  freeShafts: number[];
  locked: readonly Pair[];
  clearancePm: (bore: number, shaft: number) => number;
  isInside: (bore: number, shaft: number) => boolean;
  isForbidden: (bore: number, shaft: number) => boolean;
};

/**
 * Checks a pairing question and sorts out who is free. A locked piece is not
 * free; a piece cannot be locked twice, nor locked and left out or forbidden.
 * `file` and `caller` name the function that asks.
 *
 * @throws {MathsInputError} `<file>/sizes`, `<file>/clearances`, `<file>/piece`
 */
export function pairProblem(file: string, caller: string, question: PairQuestion): PairProblem {
  const { boresPm, shaftsPm, minPm, maxPm, aimPm, locked = [], forbidden = [] } = question;
  const refuse = (reason: string, what: string) =>
    new MathsInputError(`${file}/${reason}`, `${caller} requires ${what}`);
  const odd = [...boresPm, ...shaftsPm].find((size) => !(Number.isSafeInteger(size) && size > 0));
  if (odd !== undefined || boresPm.length === 0 || shaftsPm.length === 0) {
    throw refuse('sizes', `bores and shafts of whole picometres above zero, got ${odd ?? 'none'}`);
  }
  const ordered = minPm <= aimPm && aimPm <= maxPm && minPm < maxPm;
  if (!ordered || ![minPm, aimPm, maxPm].every(Number.isSafeInteger)) {
    const got = `${minPm}, ${aimPm} and ${maxPm}`;
    throw refuse('clearances', `whole clearances with the aim between the limits, got ${got}`);
  }
  const [outBores, outShafts] = [question.leftOut?.bores ?? [], question.leftOut?.shafts ?? []];
  const takenBores = [...outBores, ...locked.map(([bore]) => bore)];
  const takenShafts = [...outShafts, ...locked.map(([, shaft]) => shaft)];
  requirePieces(takenBores, boresPm.length, refuse);
  requirePieces(takenShafts, shaftsPm.length, refuse);
  for (const [bore, shaft] of [...forbidden, ...locked]) {
    if (bore in boresPm && shaft in shaftsPm) continue;
    throw refuse('piece', `pairs of pieces that exist, got ${bore} and ${shaft}`);
  }
  const isForbidden = among(forbidden, boresPm.length, shaftsPm.length);
  const both = locked.find(([bore, shaft]) => isForbidden(bore, shaft));
  if (both) throw refuse('piece', `locked pairs that are not forbidden, got ${both.join(' and ')}`);
  const clearancePm = (bore: number, shaft: number) => boresPm[bore]! - shaftsPm[shaft]!;
  return {
    freeBores: without(takenBores, boresPm.length),
    freeShafts: without(takenShafts, shaftsPm.length),
    locked,
    clearancePm,
    isForbidden,
    isInside: (bore, shaft) => {
      const clearance = clearancePm(bore, shaft);
      return clearance >= minPm && clearance <= maxPm;
    },
  };
}

function without(taken: readonly number[], count: number): number[] {
  const gone = new Set(taken);
  return Array.from({ length: count }, (_, piece) => piece).filter((piece) => !gone.has(piece));
}

function among(
  pairs: readonly Pair[],
  bores: number,
  shafts: number,
): (bore: number, shaft: number) => boolean {
  if (pairs.length === 0) return () => false;
  const marks = new Uint8Array(bores * shafts);
  for (const [bore, shaft] of pairs) marks[bore * shafts + shaft] = 1;
  return (bore, shaft) => marks[bore * shafts + shaft] === 1;
}

function requirePieces(
  pieces: readonly number[],
  count: number,
  refuse: (reason: string, what: string) => MathsInputError,
): void {
  const seen = new Set<number>();
  for (const piece of pieces) {
    if (!Number.isInteger(piece) || piece < 0 || piece >= count) {
      throw refuse('piece', `pieces from 0 to ${count - 1}, got ${piece}`);
    }
    if (seen.has(piece)) {
      throw refuse('piece', `each piece locked or left out once, got ${piece} twice`);
    }
    seen.add(piece);
  }
}
