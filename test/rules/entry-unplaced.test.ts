import { describe, expect, it } from 'vitest';
import { dueOf, unplacedOf, type Unplaced } from '@/lib/rules/entry-unplaced';

const at = { pieceId: 'p1', featureId: 'f1' };
const one = (id: string, over: Partial<Unplaced> = {}): Unplaced => ({
  id, text: '18.004', ...at, lacks: 'gauge', ...over,
}); // prettier-ignore

describe('what was typed and is no reading yet', () => {
  it('is read back from what a device remembers', () => {
    const list = [one('a'), one('b', { lacks: 'answer' })];
    expect(unplacedOf(JSON.stringify(list))).toEqual(list);
  });

  it.each([null, '', '{', '[]', '{"id":1}', '[{"id":"a"}]'])(
    'is nothing where %j is remembered',
    (word) => expect(unplacedOf(word)).toEqual([]),
  );

  it('is due, oldest first, when only the gauge of the feature on the bench was missing', () => {
    const list = [
      one('answer', { lacks: 'answer' }),
      one('other piece', { pieceId: 'p2' }),
      one('other feature', { featureId: 'f2' }),
      one('first'),
      one('second'),
    ];
    expect(dueOf(list, at)?.id).toBe('first');
    expect(dueOf(list.slice(0, 3), at)).toBeNull();
  });
});
