import { describe, expect, it } from 'vitest';
import { parseExpansion } from '@/lib/units/parse-expansion';
import { parseSlope } from '@/lib/units/parse-slope';
import { parseTemperature } from '@/lib/units/parse-temperature';

describe('parseSlope', () => {
  it.each([
    ['1', 1000],
    ['-0.75', -750],
    ['− 0.75 thou/in', -750],
    ['+1.5 thou per inch', 1500],
    ['1.5 µm per mm', 1500],
    ['1.5 μm/mm', 1500],
    ['0.001 in/in', 1000],
    ['2 mm/m', 2000],
    ['.125', 125],
    ['0.1 %', 1_000_000],
    ['-0', 0],
  ])('reads %s', (text, quanta) => {
    expect(parseSlope(text, '.')).toMatchObject({ kind: 'quantity', quanta });
  });

  it('takes the comma of a person whose mark it is', () => {
    expect(parseSlope('0,75', ',')).toMatchObject({ quanta: 750 });
  });

  it.each([
    ['', 'empty', ''],
    ['x', 'not-a-number', 'x'],
    ['1..2', 'not-a-number', '.'],
    ['1/2', 'not-a-number', '1'],
    ['1,250', 'two-ways', '1'],
    ['1 furlong', 'unit', 'furlong'],
    ['1 constructor', 'unit', 'constructor'],
    ['0.0001', 'too-fine', '1'],
  ])('refuses "%s": %s', (text, code, character) => {
    expect(parseSlope(text, '.')).toEqual({ kind: 'error', code, character });
  });
});

describe('parseTemperature', () => {
  it.each([
    ['60', 60_000],
    ['-10 C', -10_000],
    ['20.5 °C', 20_500],
    ['140 F', 60_000],
    ['−40 °F', -40_000],
    ['68F', 20_000],
  ])('reads %s', (text, quanta) => {
    expect(parseTemperature(text, '.')).toMatchObject({ kind: 'quantity', quanta });
  });
});

describe('parseExpansion', () => {
  it.each([
    ['11.5', 11_500],
    ['11.5 ppm', 11_500],
    ['11.5e-6', 11_500],
    ['16.7 µm/m K', 16_700],
    ['0.72', 720],
  ])('reads %s as millionths a degree', (text, quanta) => {
    expect(parseExpansion(text, '.')).toMatchObject({ kind: 'quantity', quanta });
  });
});
