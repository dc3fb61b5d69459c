import { describe, expect, it } from 'vitest';
import { shortened } from '@/app/ui/strip/shortened';
import { textWidth } from '@/app/ui/strip/text-width';

describe('shortened', () => {
  const long = 'Connecting rod of the second stage, left hand, as drawn in 1911';

  it('leaves a text alone that has room, and cuts a longer one to the width', () => {
    expect(shortened('Liner', 16, 200)).toBe('Liner');
    const cut = shortened(long, 16, 200);
    expect(cut).toMatch(/^Connecting rod of .*\u2026$/);
    expect(textWidth({ text: cut, sizePx: 16 })).toBeLessThanOrEqual(200);
    expect(textWidth({ text: cut, sizePx: 16 })).toBeGreaterThan(180);
    expect(cut).not.toContain(' \u2026');
  });

  it('is never nothing', () => {
    expect(shortened(long, 16, 1)).toBe('C\u2026');
    expect(shortened('', 16, 10)).toBe('');
  });
});
