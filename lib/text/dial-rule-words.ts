/** The words under the dial rule, and the whole of it for who cannot see it. */
export function dialRuleWords(
  { standsAt, turnTo }: { standsAt: string; turnTo: string },
  isKnown: boolean,
): { stands: string; turn: string; whole: string } {
  const stands = isKnown ? `stands at ${standsAt}` : 'set to 0';
  return {
    stands,
    turn: `turn to ${turnTo}`,
    whole: isKnown
      ? `The dial stands at ${standsAt}. Turn to ${turnTo}.`
      : `Set the dial to 0. Turn to ${turnTo}.`,
  };
}
