import { describe, expect, it } from 'vitest';
import { standing } from '@/lib/rules/standing';
import { correctionOf, readingOf } from './make';

describe('standing', () => {
  it('counts a reading nobody has said anything of', () => {
    expect(standing([readingOf(1)], [])).toMatchObject([{ state: 'counted', firstText: null }]);
  });

  it('does not count a held reading until it is said to be right', () => {
    const held = readingOf(1, { heldAs: 'thimble turn' });
    expect(standing([held], [])[0]?.state).toBe('held');
    const counted = standing(
      [held],
      [correctionOf(1, { kind: 'count', reason: 'measured twice' })],
    );
    expect(counted[0]).toMatchObject({
      state: 'counted',
      heldAs: 'thimble turn',
      reason: 'measured twice',
    });
  });

  it('strikes out, and puts back what was struck by mistake', () => {
    const struck = correctionOf(1, { kind: 'void', seq: 10 });
    const back = correctionOf(1, { kind: 'restore', seq: 11 });
    expect(standing([readingOf(1)], [struck])[0]?.state).toBe('struck');
    expect(standing([readingOf(1)], [struck, back])[0]?.state).toBe('counted');
  });

  it('puts one back that was never settled as it was: held, whatever it was struck for', () => {
    const held = readingOf(1, { heldAs: 'thimble turn' });
    const say = (kind: 'void' | 'restore' | 'count', seq: number) =>
      correctionOf(1, { kind, seq, id: `c${seq}` });
    const stateOf = (...kinds: ('void' | 'restore' | 'count')[]) =>
      standing(
        [held],
        kinds.map((kind, index) => say(kind, 10 + index)),
      )[0]!.state;
    expect(stateOf('void', 'restore')).toBe('held');
    expect(stateOf('void', 'void', 'restore')).toBe('held');
    expect(stateOf('restore')).toBe('held');
    expect(stateOf('count', 'void', 'restore')).toBe('counted');
    expect(stateOf('void', 'count')).toBe('counted');
  });

  it('hears corrections in the order of the book, not in the order given or of their clocks', () => {
    const struck = correctionOf(1, { kind: 'void', seq: 10, deviceTime: '2099-01-01T00:00:00Z' });
    const back = correctionOf(1, { kind: 'restore', seq: 11, deviceTime: '2001-01-01T00:00:00Z' });
    expect(standing([readingOf(1)], [back, struck])[0]?.state).toBe('counted');
  });

  it('keeps the text first typed beside the one that counts', () => {
    const mend = correctionOf(1, {
      kind: 'mistyped',
      text: '18.016',
      unit: 'mm',
      valuePm: 18_016_000_000,
    });
    expect(standing([readingOf(1, { text: '18.106' })], [mend])[0]).toMatchObject({
      text: '18.016',
      firstText: '18.106',
      valuePm: 18_016_000_000,
      state: 'counted',
    });
  });

  it('keeps the very first text when it was mistyped twice', () => {
    const first = correctionOf(1, { kind: 'mistyped', text: '2', unit: 'mm', valuePm: 2, seq: 10 });
    const second = correctionOf(1, {
      kind: 'mistyped',
      text: '3',
      unit: 'mm',
      valuePm: 3,
      seq: 11,
    });
    expect(standing([readingOf(1, { text: '1' })], [first, second])[0]).toMatchObject({
      text: '3',
      firstText: '1',
    });
  });

  it('moves a reading to where it belongs', () => {
    const move = correctionOf(1, {
      kind: 'move',
      toPieceId: 'other piece',
      toFeatureId: 'other feature',
      toStation: 'top',
      toDirection: 'B',
    });
    expect(standing([readingOf(1)], [move])[0]).toMatchObject({
      pieceId: 'other piece',
      featureId: 'other feature',
      station: 'top',
      direction: 'B',
    });
  });

  it('leaves alone a correction whose reading has not arrived, and hears it when it has', () => {
    const early = correctionOf(2, { kind: 'void', seq: 1 });
    expect(standing([readingOf(1)], [early])).toHaveLength(1);
    expect(standing([readingOf(1), readingOf(2)], [early])[1]?.state).toBe('struck');
  });
});
