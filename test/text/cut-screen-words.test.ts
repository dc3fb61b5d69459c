import { describe, expect, it } from 'vitest';
import {
  afreshWords,
  isMadeToWords,
  noAimWords,
  nothingToCutWords,
  slideFaultWords,
  warmFaultWords,
} from '@/lib/text/cut-screen-words';
import {
  guessedTemperaturesWords,
  hotChartKeyWords,
  hotNeedsWords,
  temperatureFaultWords,
} from '@/lib/text/heat-words';

describe('the Cut screen in words', () => {
  it.each([
    [nothingToCutWords, 'No such piece and feature in this job.'],
    [isMadeToWords('L2', 'P1'), 'L2 is made to P1 now.'],
    [
      noAimWords('P1'),
      'Nothing says what P1 is cut to: measure its partner, or give the feature two limits.',
    ],
    [afreshWords('New insert'), 'New insert: learned afresh.'],
    [slideFaultWords.division, 'What one division of the dial stands for.'],
    [slideFaultWords.bites, 'A length, or nothing.'],
    [slideFaultWords.lap, 'A length, or nothing.'],
    [slideFaultWords.dialAt, 'What the dial shows, or nothing.'],
    [slideFaultWords.fineFeed, 'How far the dial goes for one of infeed.'],
    [warmFaultWords, 'A temperature in degrees C, or nothing.'],
  ])('says %j', (words, says) => {
    expect(words).toBe(says);
  });
});

describe('Hot and cold in words', () => {
  it.each([
    [
      hotChartKeyWords,
      'Full line: both at one temperature. Dashed: the outer piece stays, the inner one alone changes. Ring: the tightest. Grey: inside the fit.',
    ],
    [guessedTemperaturesWords, 'These temperatures are only to begin with. Type your own.'],
    [
      hotNeedsWords,
      'The clearance hot and cold is worked out when both materials and all four temperatures are known.',
    ],
    [temperatureFaultWords['out of range'], 'From \u2212100 to 1000 °C.'],
    [temperatureFaultWords.order, 'The hottest is below the coldest.'],
  ])('says %j', (words, says) => {
    expect(words).toBe(says);
  });
});
