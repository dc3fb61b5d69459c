import { expect, it } from 'vitest';
import { unplacedLabel, unplacedWords, whichGaugeWords } from '@/lib/text/bench-unplaced';

it('says what is missing of what was typed', () => {
  expect(whichGaugeWords(' 18.004')).toBe('Which gauge is 18.004 from? It is kept once you say.');
  expect(unplacedWords([{ lacks: 'gauge' }, { lacks: 'gauge' }])).toBe(
    'Not kept yet: choose the gauge.',
  );
  expect(unplacedWords([{ lacks: 'answer' }])).toBe(
    'Not placed yet. Go to where it belongs and press it:',
  );
  expect(unplacedWords([{ lacks: 'gauge' }, { lacks: 'answer' }])).toBe(
    'Not placed yet. Go to where each belongs and press it:',
  );
});

it('names it by what was typed, and by a number where readings are hidden', () => {
  expect(unplacedLabel('18.004 ', 0, false)).toBe('18.004');
  expect(unplacedLabel('18.004', 1, true)).toBe('no. 2');
});
