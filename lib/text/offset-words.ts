/** How an offset and what goes on the dial are labelled; a length has no radius. */
export function offsetLabels(facts: {
  onDiameter: boolean;
  dial: 'radius' | 'diameter';
  onDialPm: number;
}): { offset: string; dial: string } {
  const way = facts.onDialPm < 0 ? 'smaller' : 'larger';
  if (!facts.onDiameter) return { offset: 'Offset, on the size', dial: `On the dial, ${way}` };
  const dial = facts.dial === 'radius' ? 'Radius' : 'Diameter';
  return { offset: 'Offset, on diameter', dial: `${dial} dial, ${way}` };
}

/** Where the next piece comes out once an offset is in. */
export function thenWords(mark: string, size: string): string {
  return `Then ${mark} comes out near ${size}: an estimate.`;
}

/** Said where the division of a dial is typed as nothing. */
export const noDivisionWords = 'One division is more than nothing.';
