import { expect, it } from 'vitest';
import { lastTurn } from '@/lib/rules/last-turn';
import { correctionOf } from './make';
import { smallRun } from './small-run';

it('what happens now happens after the last piece that was read, also where its reading was set aside', () => {
  expect(lastTurn(smallRun({ sizes: [null, null] }))).toBeNull();
  expect(lastTurn(smallRun({ sizes: [-9, null, -7], of: 5 }))).toMatchObject({ mark: 'W3' });
  const corrections = () => [correctionOf(3, { kind: 'void', reason: 'chipped' })];
  const view = smallRun({ sizes: [-9, -8, 40], of: 5, corrections });
  expect(view.points.at(-1)!.mark).toBe('W2');
  expect(lastTurn(view)).toMatchObject({ mark: 'W3', ordinal: 3 });
});
