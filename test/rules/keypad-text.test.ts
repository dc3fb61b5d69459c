import { expect, it } from 'vitest';
import { keypadText } from '@/lib/rules/keypad-text';

it.each([
  ['18.00', '4', '18.004'],
  ['', ',', ','],
  ['.01', 'sign', '+.01'],
  ['+.01', 'sign', '-.01'],
  ['-.01', 'sign', '.01'],
  ['\u22121', 'sign', '1'],
  ['18.0\u00bd', 'rub out', '18.0'],
  ['', 'rub out', ''],
])('"%s" and the key %s make "%s"', (text, key, after) => {
  expect(keypadText(text, key)).toBe(after);
});
