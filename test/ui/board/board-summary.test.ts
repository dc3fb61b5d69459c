import { expect, it } from 'vitest';
import { boardSummary } from '@/app/ui/board/board-summary';
import { jobView } from '@/lib/rules/job-view';
import { um } from '@/test/rules/make';
import { smallRunSheet, wander, type SmallRun } from '@/test/rules/small-run';

it('a folded part says of its run what the run itself says', () => {
  const says = (small: SmallRun) => {
    const view = jobView({ ...smallRunSheet(small), departures: [] });
    return boardSummary.words(view, view.parts[0]!, { unit: 'mm', decimal: '.' });
  };
  const fine = { divisionPm: um / 10 };
  expect(says({ sizes: wander(12, 1, -13), run: fine })).toBe(
    'no drift that can be told from scatter',
  );
  expect(says({ sizes: wander(12, 1, -3), run: fine })).toBe('steady, but too near the top');
  expect(says({ sizes: wander(12, 1, -3), run: { ...fine, zones: true } })).toMatch(/^by zones: /);
});
