import { expect, it } from 'vitest';
import { pairMarkFault } from '@/lib/store/pair-mark-fault';

const a = (mark: string, state = 'final', struckAt: string | null = null) => ({
  mark,
  state,
  struckAt,
});
const others = [a('A1'), a('C1', 'undone')];

it.each([
  ['a mark another final pair carries', a('A1'), undefined, 'pair-mark-taken'],
  ['the same in other letters', a(' a1'), undefined, 'pair-mark-taken'],
  ['a mark of its own', a('B1'), undefined, undefined],
  ['the mark of a pair that was undone', a('C1'), undefined, undefined],
  ['no mark', a(' '), undefined, undefined],
  ['a pair that is not final', a('A1', 'locked'), undefined, undefined],
  ['a pair that comes to the mark', a('A1'), a('B1'), 'pair-mark-taken'],
  ['a pair that becomes final', a('A1'), a('A1', 'locked'), 'pair-mark-taken'],
  ['a pair that is put back', a('A1'), a('A1', 'final', '2026-03-14'), 'pair-mark-taken'],
  ['a pair that stood so already, in an older book', a('A1'), a('a1'), undefined],
])('judges %s', (_, pair, before, code) => {
  expect(pairMarkFault(pair, before, others)?.code).toBe(code);
});
