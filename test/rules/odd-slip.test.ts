import { describe, expect, it } from 'vitest';
import { jobView } from '@/lib/rules/job-view';
import { oddPieces } from '@/lib/rules/odd-pieces';
import { oddReadings } from '@/lib/rules/odd-readings';
import { oddSlip } from '@/lib/rules/odd-slip';
import { um } from './make';
import { smallRunSheet, wander, type SmallRun } from './small-run';

const line = wander(12, 0.4).map((off, i) => Math.round(-20 + i + off));

function slipAt(sizes: SmallRun['sizes']) {
  const view = jobView(smallRunSheet({ sizes }));
  const [odd, ...more] = oddPieces(view.runs[0]!).odd;
  expect(more).toEqual([]);
  return oddSlip(view, odd!, '.');
}
const at = (index: number, off: number) => line.map((v, i) => (i === index ? v + off : v));

describe('the slip an odd piece looks like', () => {
  it('is held against the line, not against the other pieces: a turn of the thimble late in a drift', () => {
    expect(slipAt(at(10, 500))).toMatchObject({
      kind: 'thimble turn',
      insteadPm: (12_000 + line[10]!) * um,
      reading: { pieceId: 'piece 11' },
    });
  });

  it('is two figures swapped where that brings it back to the line', () => {
    // The line has 11.986 there; 11.968 was typed.
    expect(line[6]).toBe(-14);
    expect(slipAt(line.map((v, i) => (i === 6 ? -32 : v)))).toMatchObject({
      kind: 'swapped figures',
      insteadPm: 11_986 * um,
    });
  });

  it('is none for a few thousandths, and then names the reading farthest off', () => {
    const three = line.map((v, i) => (i === 6 ? [v + 7, v + 9, v + 8] : v));
    const found = slipAt(three)!;
    expect(found).toMatchObject({ kind: null, insteadPm: null });
    expect(found.reading.valuePm).toBe((12_000 + line[6]! + 9) * um);
  });

  it('names the one reading of several that it explains, so that only that one is set aside', () => {
    const three = line.map((v, i) => (i === 6 ? [v, v + 500, v] : v));
    const found = slipAt(three)!;
    expect(found.kind).toBe('thimble turn');
    expect(found.reading.valuePm).toBe((12_000 + line[6]! + 500) * um);
  });
});

describe('the readings that make a piece odd', () => {
  const off = (sizes: SmallRun['sizes']) => {
    const view = jobView(smallRunSheet({ sizes }));
    const [odd] = oddPieces(view.runs[0]!).odd;
    return oddReadings(odd!).map(({ valuePm }) => Math.round(valuePm / um) - 12_000 - line[6]!);
  };
  const read = (...readings: number[]) =>
    line.map((v, i) => (i === 6 ? readings.map((one) => v + one) : v));

  it('are all of them where all are off, also in the other direction', () => {
    expect(off(read(9, 8, 10))).toEqual([9, 8, 10]);
    expect(off(read(-9, -8))).toEqual([-9, -8]);
  });

  it('are not the one that was measured again and lies on the line', () => {
    expect(off(read(20, 0))).toEqual([20]);
    expect(off(read(-20, 1, -19))).toEqual([-20, -19]);
  });
});
