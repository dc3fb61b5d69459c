import { expect, it } from 'vitest';
import {
  cutSinceWords,
  repeatWords,
  takenAllWords,
  whereFromWords,
  whoseWords,
} from '@/lib/text/bench-ask';
import { heardWords } from '@/lib/text/bench-heard';

it('counts the places that are taken, and not where there is one', () => {
  expect(takenAllWords(6)).toBe('all 6 taken');
  expect(takenAllWords(1)).toBe('taken already');
});

it('says that a repeat was passed over', () => {
  expect(repeatWords(' 18.003')).toBe('18.003 came twice at once. Repeat ignored.');
});

it('asks which of two a reading is that comes while another is held', () => {
  const there = 'skirt, across A';
  expect(whoseWords('17.998 ', { there, held: '18.498', next: 'skirt, across B' })).toEqual({
    title: '17.998: is it for skirt, across A again?',
    answers: ['it replaces 18.498', 'it is skirt, across B'],
  });
  expect(whoseWords('17.998', { there, held: null, next: null }).answers).toEqual([
    'it replaces the one held',
    'one more there',
  ]);
});

it('names no place where a feature has one', () => {
  const next = '';
  expect(whoseWords('12.01', { there: 'length', held: null, next }).answers[1]).toBe(
    'one more there',
  );
  expect(whereFromWords('12.01', { of: 1, mark: 'P6', place: '', next: null })).toEqual({
    title: 'Taken already. Where is 12.01 from?',
    answers: ['P6 again'],
  });
});

it('asks where a reading is from when every place has one', () => {
  const at = { of: 6, mark: 'P6', place: 'skirt, across B' };
  expect(whereFromWords(' 17.994', { ...at, next: 'P6 bush seat' })).toEqual({
    title: 'All 6 taken. Where is 17.994 from?',
    answers: ['P6 again, skirt, across B', 'the first of P6 bush seat'],
  });
});

it('asks whether it was cut', () => {
  expect(cutSinceWords('18.010')).toEqual({
    title: '18.010: was it cut since the others?',
    answers: ['cut since, this is the new size', 'the same metal'],
  });
});

it('says the reading to who hears it', () => {
  const reading = { figure: '17.999', unit: 'mm', verdict: 'Inside', read: 2 } as const;
  expect(heardWords({ ...reading, where: 'crown, across B' })).toBe(
    '17.999 millimetres, crown, across B. Inside. 2 read.',
  );
  expect(heardWords({ ...reading, unit: 'in', where: '' })).toBe('17.999 inches. Inside. 2 read.');
});
