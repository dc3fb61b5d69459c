/** The stretch of a run that is looked at, in ordinals; a whole one reaches half a piece past each end. */
export type Window = { from: number; to: number };

/** Never nearer than this many pieces. */
const piecesLeast = 8;

/** All of a run. */
export function wholeWindow(last: number): Window {
  return { from: 0.5, to: Math.max(1, last) + 0.5 };
}

/** Moved and scaled, but never past the ends of the run and never nearer than a few pieces. */
export function within({ from, to }: Window, last: number): Window {
  const whole = wholeWindow(last);
  const longest = whole.to - whole.from;
  const length = Math.min(Math.max(to - from, Math.min(piecesLeast, longest)), longest);
  const middle = (from + to) / 2;
  const start = Math.min(Math.max(middle - length / 2, whole.from), whole.to - length);
  return { from: start, to: start + length };
}

/** Nearer (`factor` below 1) or farther, with the ordinal at `about` staying where it is. */
export function zoomed(window: Window, factor: number, about: number, last: number): Window {
  const { from, to } = window;
  const length = within({ from: 0, to: (to - from) * factor }, last);
  const kept = length.to - length.from;
  const part = (about - from) / (to - from);
  return within({ from: about - part * kept, to: about + (1 - part) * kept }, last);
}

/** Earlier or later by a part of what is seen; an infinite part goes to that end. */
export function moved({ from, to }: Window, part: number, last: number): Window {
  if (part === Infinity || part === -Infinity) {
    const end = part > 0 ? wholeWindow(last).to : wholeWindow(last).from;
    return part > 0
      ? within({ from: end - (to - from), to: end }, last)
      : within({ from: end, to: end + (to - from) }, last);
  }
  const by = (to - from) * part;
  return within({ from: from + by, to: to + by }, last);
}
