import { shownLength, type Shown } from './shown-size';

/** A clearance in words: "0.011 clear", or "0.004 tight" where it is interference. */
export function clearWords(pm: number, stepPm: number, shown: Shown): string {
  const text = shownLength(Math.abs(pm), stepPm, shown);
  return `${text} ${pm < 0 && /[1-9]/.test(text) ? 'tight' : 'clear'}`;
}
