import { describe, expect, it } from 'vitest';
import { strayCharacter } from '@/lib/schema/stray-character';

describe('strayCharacter', () => {
  it.each([
    ['a NUL', { text: '18.0\0' }, 'text'],
    ['half a character, the first', { list: ['a', 'b\ud83d'] }, 'list.1'],
    ['half a character, the second', { a: { b: ['\udee0'] } }, 'a.b.0'],
    ['the whole', '\0', ''],
  ])('finds %s and says where', (_, value, path) => {
    expect(strayCharacter(value)).toBe(path);
  });

  it.each([
    ['whole characters of two halves', { name: 'lathe 🛠 測定 ⌀' }],
    ['line ends and tabs', '\t18.003\r\n'],
    ['numbers and null', { a: [1, null, true] }],
    ['nothing', undefined],
  ])('lets %s pass', (_, value) => {
    expect(strayCharacter(value)).toBeUndefined();
  });

  it('walks a value nested a hundred thousand deep', () => {
    const depth = 100_000;
    const deep = JSON.parse(`${'['.repeat(depth)}"\\u0000"${']'.repeat(depth)}`) as unknown;
    expect(strayCharacter(deep)).toBe('0.0.0.0.0.0.0.0');
  });
});
