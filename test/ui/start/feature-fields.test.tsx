import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { emptyFeature } from '@/app/ui/start/empty-part';
import { FeatureFields } from '@/app/ui/start/feature-fields';
import type { DraftFeature } from '@/lib/rules/draft-job';

/** What the two lists of a line stand at, before anybody has chosen from them. */
function standing(over: Partial<DraftFeature>) {
  const markup = renderToStaticMarkup(
    <FeatureFields
      feature={{ ...emptyFeature(() => 'a'), ...over }}
      unit="mm"
      decimal="."
      fault={null}
      onChange={() => {}}
    />,
  );
  return [...markup.matchAll(/<option value="([^"]*)" selected="">/g)].map(([, value]) => value);
}

describe('a line of the drawing', () => {
  it.each([
    ['18.000 +0.018 0', 'bore', 'along'],
    ['12.000 0 -0.027', 'outside', 'along'],
    ['52.00 ±0.05', 'length', 'one'],
  ])('%s stands as a %s, read at its usual places', (drawn, kind, places) => {
    expect(standing({ drawn })).toEqual([kind, places]);
  });

  it('stands as a person has said, whatever the drawing makes likely', () => {
    const said = { drawn: '52.00 ±0.05', kind: 'slot', places: 'across' } as const;
    expect(standing(said)).toEqual(['slot', 'across']);
  });
});
