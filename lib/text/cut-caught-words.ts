import { shownLength, type Shown } from './shown-size';

/** That a reading has just said a piece is past its stop: "P7 is 0.004 past 17.998, the last that suits L7." */
export function caughtWords(
  facts: { mark: string; partner: string; byPm: number; stopPm: number; resolutionPm: number },
  shown: Shown,
): string {
  const figure = (pm: number) => shownLength(pm, facts.resolutionPm, shown);
  return `${facts.mark} is ${figure(facts.byPm)} past ${figure(facts.stopPm)}, the last that suits ${facts.partner}. Cut no more.`;
}
