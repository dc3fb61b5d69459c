import type { Fit } from '@/lib/schema/fit';

/** Which field of a fit keeps each of its four temperatures; and what is reckoned with before anybody has said. */
export const keptTemperatures = {
  lowest: ['soakedLowMilliC', 0],
  highest: ['soakedHighMilliC', 80_000],
  outer: ['badInternalMilliC', 20_000],
  inner: ['badExternalMilliC', 60_000],
} as const;

export type FitTemperatures = Record<keyof typeof keptTemperatures, number> & {
  /** Nobody has said one of them for this fit. */
  isGuess: boolean;
};

/** The temperatures a fit is reckoned with, degrees C. */
export function fitTemperatures(fit: Fit): FitTemperatures {
  const of = (key: keyof typeof keptTemperatures) => {
    const [field, usual] = keptTemperatures[key];
    return (fit[field] ?? usual) / 1000;
  };
  const fields = Object.values(keptTemperatures);
  return {
    lowest: of('lowest'),
    highest: of('highest'),
    outer: of('outer'),
    inner: of('inner'),
    isGuess: fields.every(([field]) => (fit[field] ?? null) === null),
  };
}
