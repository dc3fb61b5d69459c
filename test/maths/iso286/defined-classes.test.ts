import { describe, expect, it } from 'vitest';
import { definedClasses } from '@/lib/maths/iso286/defined-classes';

describe('definedClasses', () => {
  it('lists every class once and leaves out what the standard does not define', () => {
    const texts = definedClasses('external', 25).map((one) => one.text);
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts).toContain('j7');
    expect(texts).not.toContain('j9');
    expect(texts).not.toContain('cd6');
    expect(definedClasses('external', 8).map((one) => one.text)).toContain('cd6');
  });
});
