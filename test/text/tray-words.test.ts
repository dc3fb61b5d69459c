import { expect, it } from 'vitest';
import { awaySays, trayNotice, traySays, trayTitle } from '@/lib/text/tray-words';

it('names what was refused and where it belongs', () => {
  const at = { mark: 'P1', feature: 'Outside', place: 'crown, across A' };
  const reading = { what: { text: '18.004 ', unit: 'mm' } };
  expect(trayTitle({ ...reading, ...at })).toBe('Reading 18.004 mm of P1 outside, crown, across A');
  expect(trayTitle({ ...reading, ...at, place: '' })).toBe('Reading 18.004 mm of P1 outside');
  expect(trayTitle({ ...reading, mark: null, feature: null, place: '' })).toBe(
    'Reading 18.004 mm of another job',
  );
  const correction = { what: { correction: 'void' } };
  expect(trayTitle({ ...correction, ...at })).toContain('Correction (void) of P1 outside');
  const cut = (spring: boolean) => trayTitle({ what: { spring }, ...at, place: '' });
  expect([cut(false), cut(true)]).toEqual(['Cut of P1 outside', 'Spring pass of P1 outside']);
  const event = (isFirst: boolean) =>
    trayTitle({ ...at, what: { event: 'insert changed', isFirst }, place: '' });
  expect([event(false), event(true)]).toEqual([
    'Insert changed after P1 outside',
    'Insert changed before P1 outside',
  ]);
  expect(trayTitle({ ...at, what: { event: 'coolant', isFirst: false }, feature: null })).toBe(
    'Coolant of another job',
  );
});

it('says of a cut or an event that it was struck out, or put back', () => {
  const at = { mark: 'P1', feature: 'Outside', place: '' };
  expect(trayTitle({ ...at, what: { spring: false }, strike: 'out' })).toBe(
    'Struck out: Cut of P1 outside',
  );
  const coolant = { event: 'coolant', isFirst: false } as const;
  expect(trayTitle({ ...at, what: coolant, strike: 'back' })).toBe(
    'Put back: Coolant after P1 outside',
  );
  const nowhere = { mark: null, feature: null, place: '' };
  const unknown = (thing: 'cut' | 'runEvent') =>
    trayTitle({ ...nowhere, what: { thing }, strike: 'out' });
  expect([unknown('cut'), unknown('runEvent')]).toEqual([
    'Struck out: Cut of another job',
    'Struck out: Event of another job',
  ]);
});

it('says why, and that it is kept here', () => {
  expect(traySays('There is no piece with this id in this job.')).toBe(
    'There is no piece with this id in this job. It is kept on this device.',
  );
  expect(traySays(null)).toBe('No reason was given. It is kept on this device.');
  // 11:55 where the tests run; the words around it are what counts here.
  expect(awaySays({ reason: 'measured again.', atMs: Date.parse('2026-03-14T11:55:00Z') })).toMatch(
    /^Put away 14 March, \d\d:55: measured again\. It is not in the notebook\.$/,
  );
  expect([1, 3].map(trayNotice)).toEqual([
    'The notebook would not take one entry.',
    'The notebook would not take 3 entries.',
  ]);
});
