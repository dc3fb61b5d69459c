import { afterEach, describe, expect, it, vi } from 'vitest';
import { Id } from '@/lib/schema/common';
import { uuidv7 } from '@/lib/store/uuid';

afterEach(() => vi.useRealTimers());

describe('uuidv7', () => {
  it('is a UUID of version 7 and variant 10 that begins with the time', () => {
    // RFC 9562, appendix A.6: its example of version 7 is of this moment, and begins 017F22E2-79B0-7.
    vi.useFakeTimers({ now: 0x017f_22e2_79b0 });
    const id = uuidv7();
    expect(Id.parse(id)).toBe(id);
    expect(id).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('rises, also within a millisecond and when the clock is set back', () => {
    vi.useFakeTimers({ now: 0x7fff_22e2_7a00 });
    const ids = Array.from({ length: 5000 }, uuidv7);
    vi.setSystemTime(0x7fff_22e2_0000);
    ids.push(...Array.from({ length: 5000 }, uuidv7));
    expect(ids).toEqual(ids.toSorted());
    expect(new Set(ids).size).toBe(ids.length);
  });
});
