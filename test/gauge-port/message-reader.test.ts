import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { messageReader, type MessageCut } from '@/lib/gauge-port/message-reader';

const bytes = (text: string) => Uint8Array.from(text, (one) => one.charCodeAt(0));
const message = (text: string) => ({ kind: 'message', text });
const spoilt = { kind: 'spoilt' };

describe('messageReader', () => {
  const read = (cut: MessageCut, ...chunks: string[]) => {
    const reader = messageReader(cut);
    return chunks.flatMap((chunk) => reader.push(bytes(chunk)));
  };

  it('cuts at CR, LF or both, and gives out no unfinished message', () => {
    expect(read('line', '18.003\r\n18.005\r18.004\n18.0')).toEqual([
      message('18.003'),
      message('18.005'),
      message('18.004'),
    ]);
  });

  it('gives the same messages however the line breaks them up', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(30)), (cuts) => {
        const sent = '+  18.003 mm\r\n   0.7088 in\r\n\u0002003000180030M\r';
        const at = [0, ...cuts.toSorted((a, b) => a - b), sent.length];
        const chunks = at.slice(1).map((to, n) => sent.slice(at[n], to));
        expect(read('line', ...chunks)).toEqual(read('line', sent));
        expect(read('line', sent)).toHaveLength(3);
      }),
    );
  });

  it('cuts at a comma, a tab or a pause only where the gauge was taught so', () => {
    expect(read('comma', '18.003,18.005,')).toEqual([message('18.003'), message('18.005')]);
    expect(read('tab', '18.003\t')).toEqual([message('18.003')]);
    expect(read('line', '18.003,18.005\t\r')).toEqual([message('18.003,18.005\t')]);
    const paused = messageReader('pause');
    expect(paused.push(bytes('18.003'))).toEqual([]);
    expect(paused.pause()).toEqual([message('18.003')]);
    expect(paused.pause()).toEqual([]);
    const lined = messageReader('line');
    lined.push(bytes('18.003'));
    expect(lined.pause()).toEqual([]);
  });

  it('gives nothing of a spoilt message, whatever of it is readable, and the next one whole', () => {
    const reader = messageReader('line');
    reader.push(bytes('1'));
    reader.spoil();
    expect(reader.push(bytes('8.003\r18.005\r'))).toEqual([message('18.005')]);
    reader.spoil();
    expect(reader.push(bytes('003\r18.004\r'))).toEqual([message('18.004')]);
    const paused = messageReader('pause');
    paused.spoil();
    paused.push(bytes('8.003'));
    expect(paused.pause()).toEqual([]);
    paused.push(bytes('18.005'));
    expect(paused.pause()).toEqual([message('18.005')]);
  });

  it('takes no byte above 7E for a character: the line is set to another parity', () => {
    // 7E1 read as 8N1: the parity bit of '1' (31 hex, three ones) stands as the eighth.
    expect(read('line', '\u00b18.003\r18.005\r')).toEqual([spoilt, message('18.005')]);
  });

  it('gives up a line without an end once it is longer than any reading', () => {
    expect(read('line', '1'.repeat(64))).toEqual([]);
    expect(read('line', '1'.repeat(300), '\r18.003\r')).toEqual([spoilt, message('18.003')]);
  });

  it('drops the rest of a message that began before the line was opened', () => {
    const reader = messageReader('line', true);
    expect(reader.push(bytes('.003\r18.005\r'))).toEqual([message('18.005')]);
  });
});
