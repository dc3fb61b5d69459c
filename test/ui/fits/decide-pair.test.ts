import { describe, expect, it } from 'vitest';
import { tiePair } from '@/app/ui/fits/decide-pair';
import { pairsInTheWay } from '@/lib/rules/pairs-in-the-way';
import type { Pair } from '@/lib/schema/fit';

const at = '2026-03-14T11:00:00Z';
const pair = (id: string, internal: string, external: string, over: Partial<Pair> = {}): Pair => ({
  id, version: 3, createdAt: at, struckAt: null, jobId: 'job', fitId: 'fit', internalPieceId: internal,
  externalPieceId: external, state: 'locked', mark: '', clearancePm: null, uncertaintyPm: null,
  decidedAt: at, personId: null, ...over,
}); // prettier-ignore
const who = { decidedAt: at, personId: 'hale' };
const two = { internalPieceId: 'L2', externalPieceId: 'P1' };

/** What is asked of the book, in order; `answer` is what it says to each. */
async function asked(pairs: Pair[], answer = true) {
  const requests: unknown[][] = [];
  const kept = await tiePair(
    {
      make: (_, { id, ...body }) => {
        requests.push(['make', { ...body, id: typeof id }]);
        return Promise.resolve(answer);
      },
      change: (_, id, body) => {
        requests.push(['change', id, body]);
        return Promise.resolve(answer);
      },
    },
    pairs,
    { id: 'fit', jobId: 'job' },
    two,
    who,
  );
  return { kept, requests };
}

describe('tiePair', () => {
  it('locks two free pieces, with who and when', async () => {
    const { kept, requests } = await asked([]);
    expect(kept).toBe(true);
    expect(requests).toEqual([
      [
        'make',
        {
          id: 'string',
          jobId: 'job',
          fitId: 'fit',
          ...two,
          ...who,
          state: 'locked',
          mark: '',
          clearancePm: null,
          uncertaintyPm: null,
        },
      ],
    ]);
  });

  it('lets go of a lock of either piece first, and writes on the row the two have already', async () => {
    const before = [
      pair('own', 'L1', 'P1'),
      pair('of the partner', 'L2', 'P9'),
      pair('theirs', 'L2', 'P1', { state: 'left out' }),
      pair('elsewhere', 'L3', 'P3'),
    ];
    expect((await asked(before)).requests).toEqual([
      ['change', 'own', { version: 3, state: 'undone', ...who }],
      ['change', 'of the partner', { version: 3, state: 'undone', ...who }],
      ['change', 'theirs', { version: 3, state: 'locked', ...who }],
    ]);
  });

  it('goes no further when a lock could not be let go', async () => {
    const { kept, requests } = await asked([pair('own', 'L1', 'P1')], false);
    expect(kept).toBe(false);
    expect(requests).toHaveLength(1);
  });

  it('asks nothing of the book while a piece is in a final pair with another', async () => {
    const { kept, requests } = await asked([pair('own', 'L1', 'P1', { state: 'final' })]);
    expect(kept).toBe(false);
    expect(requests).toEqual([]);
  });
});

describe('pairsInTheWay', () => {
  it('are those of the same fit that hold, and not the pair itself', () => {
    const pairs = [
      pair('itself', 'L2', 'P1'),
      pair('undone', 'L1', 'P1', { state: 'undone' }),
      pair('apart', 'L1', 'P1', { state: 'left out' }),
      pair('struck', 'L1', 'P1', { struckAt: at }),
      pair('other fit', 'L1', 'P1', { fitId: 'other' }),
      pair('final', 'L2', 'P2', { state: 'final' }),
    ];
    const found = pairsInTheWay(pairs, 'fit', 'L2', 'P1');
    expect(found.final?.id).toBe('final');
    expect(found.locked).toEqual([]);
  });
});
