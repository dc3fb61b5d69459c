import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it, vi } from 'vitest';
import { EditSheet } from '@/app/ui/edit/edit-sheet';
import { JobProvider } from '@/app/ui/job/job-provider';
import { exampleSheet } from '@/test/rules/example-sheet';
import { readOf } from '@/test/ui/fits/fits-page';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));

it('names what is struck out on the job as drawn, each with a button that puts it back', () => {
  const sheet = exampleSheet();
  const struckAt = '2026-03-14T11:00:00Z';
  const [part] = sheet.parts;
  const feature = sheet.features.find(({ partId }) => partId !== part!.id)!;
  const struck = {
    ...sheet,
    fits: [],
    runs: [],
    parts: sheet.parts.map((one) => (one.id === part!.id ? { ...one, struckAt } : one)),
    features: sheet.features.map((one) => (one.id === feature.id ? { ...one, struckAt } : one)),
  };
  const text = readOf(
    renderToStaticMarkup(
      <JobProvider
        sheet={struck}
        chosen={{ unit: 'mm', decimal: '.', hand: 'right', personId: null }}
      >
        <EditSheet />
      </JobProvider>,
    ),
  );
  const title = `${feature.balloon} ${feature.name}`;
  expect(text).toContain(`${title} struck out; its readings stay Put back ${title}`);
  const { name } = part!;
  expect(text).toContain(`${name} struck out, with its pieces and features Put back ${name}`);
});
