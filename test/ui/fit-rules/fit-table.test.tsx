import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { FitRules, FitTable } from '@/app/ui/fit-rules/fit-rules';
import { fitTableRows } from '@/app/ui/fit-rules/fit-table-rows';
import { fanFit } from '../gallery/fit';
import { mm } from '../gallery/strips';

describe('the table of a fit', () => {
  it('says every pair, what is to make, and who has no partner', () => {
    const spare = { mark: 'L9', sizePm: mm(18.02), expandedPm: mm(0.001) };
    const data = {
      ...fanFit,
      internal: { ...fanFit.internal, pieces: [...fanFit.internal.pieces, spare] },
      external: {
        ...fanFit.external,
        pieces: [...fanFit.external.pieces, { ...spare, mark: 'P9', sizePm: mm(18.019) }],
      },
    };
    const rows = fitTableRows(data).map((row) => Object.values(row).join(' '));
    expect(rows[0]).toBe('L1 18.007 P1 17.997 0.010 inside');
    expect(rows[5]).toBe('L6 18.002 P3 17.991 0.011 inside');
    expect(rows[6]).toBe('L7 18.010 P7 to 18.000 \u2013 to make');
    expect(rows[8]).toBe('L9 18.020 \u2013  \u2013 no partner');
    expect(rows[9]).toBe('\u2013  P9 18.019 \u2013 no partner');
    expect(rows).toHaveLength(10);
  });

  it('has a caption with the unit and a heading to each row', () => {
    const html = renderToStaticMarkup(<FitTable data={fanFit} />);
    expect(html).toContain('Liners with pistons, mm</caption>');
    expect(html.match(/scope="row"/g)).toHaveLength(8);
  });
});

describe('FitRules', () => {
  it('is one picture that says what it shows, its scale and how far the lower rule is slid', () => {
    const html = renderToStaticMarkup(<FitRules data={fanFit} width={1198} />);
    const [, name] = /role="img" aria-label="([^"]+)"/.exec(html)!;
    expect(name).toMatch(/^Liners above, pistons below, 1\d\u00a0\d00 times full size, /);
    expect(name).toContain('the lower rule slid 0.010 so that a pair at the aim stands plumb.');
    expect(name).toContain('6 pairs, 2 to make.');
  });
});
