import { describe, expect, it } from 'vitest';
import { verdictWords, type VerdictFacts } from '@/lib/text/verdict';

const shown = { unit: 'mm', decimal: '.', resolutionPm: 1_000_000 } as const;

// The words are those of look.md sections 7 and 9.
describe('verdictWords', () => {
  it.each<[VerdictFacts, string]>([
    [{ state: 'inside' }, 'Inside'],
    [{ state: 'near', side: 'top' }, 'Near the top'],
    [{ state: 'near', side: 'bottom' }, 'Near the bottom'],
    [{ state: 'out', side: 'top', beyondPm: 3_000_000 }, 'Out, 0.003 large'],
    [{ state: 'out', side: 'bottom', beyondPm: 12_000_000 }, 'Out, 0.012 small'],
    [{ state: 'unsure', side: 'top', limitPm: 18_000_000_000 }, 'Unsure, too near 18.000 to say'],
    [{ state: 'unsure' }, 'Unsure, too near a limit to say'],
    [{ state: 'to cut', side: 'top', beyondPm: 80_000_000 }, 'Still to cut, 0.080 over'],
    [{ state: 'to cut', side: 'bottom', beyondPm: 80_000_000 }, 'Still to cut, 0.080 under'],
    [{ state: 'held' }, 'Held'],
    [{ state: 'struck' }, 'Struck out'],
    [{ state: 'to make' }, 'To make'],
    [{ state: 'none' }, 'No reading'],
  ])('says %j as %s', (facts, words) => {
    expect(verdictWords(facts, shown)).toBe(words);
  });

  it('says an amount too small to show as one step of the gauge, not as nothing', () => {
    const facts: VerdictFacts = { state: 'out', side: 'top', beyondPm: 300_000 };
    expect(verdictWords(facts, shown)).toBe('Out, 0.001 large');
  });

  it('says inches to the place of the gauge, with the mark of the person', () => {
    const inches = { unit: 'in', decimal: ',', resolutionPm: 2_540_000 } as const;
    const facts: VerdictFacts = { state: 'out', side: 'top', beyondPm: 3 * 2_540_000 };
    expect(verdictWords(facts, inches)).toBe('Out, 0,0003 large');
  });

  it('takes a usual micrometer where no gauge is chosen', () => {
    const none = { unit: 'mm', decimal: '.', resolutionPm: null } as const;
    expect(verdictWords({ state: 'out', side: 'top', beyondPm: 3_000_000 }, none)).toBe(
      'Out, 0.003 large',
    );
    const inches = { ...none, unit: 'in' } as const;
    expect(verdictWords({ state: 'out', side: 'top', beyondPm: 2_540_000 }, inches)).toBe(
      'Out, 0.0001 large',
    );
  });
});
