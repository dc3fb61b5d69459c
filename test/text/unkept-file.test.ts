import { expect, it } from 'vitest';
import { unkeptFile } from '@/lib/text/unkept-file';

it('writes a line for each entry, and lets nothing typed break it', () => {
  const line = {
    deviceTime: '2026-03-14T10:00:00+01:00',
    mark: 'P1',
    feature: 'Outside',
    place: 'crown, across A',
    text: '18.004\t',
    unit: 'mm',
    kind: 'reading',
    id: 'r1',
  };
  expect(unkeptFile([line])).toBe(
    'deviceTime\tkind\tmark\tfeature\tplace\ttext\tunit\tid\n' +
      '2026-03-14T10:00:00+01:00\treading\tP1\tOutside\tcrown, across A\t18.004 \tmm\tr1\n',
  );
});
