import { expect, it } from 'vitest';
import { tones } from '@/app/ui/bench/feedback';

it('tells every two outcomes apart, by the ear and by the hand alone', () => {
  const all = Object.values(tones);
  const heard = all.map((tone) => tone.map(({ hertz, ms }) => `${hertz} ${ms}`).join());
  const felt = all.map((tone) => tone.map(({ ms }) => ms).join());
  expect(new Set(heard).size).toBe(all.length);
  expect(new Set(felt).size).toBe(all.length);
});
