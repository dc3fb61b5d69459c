import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { SizeStrip } from '@/app/ui/strip/size-strip';
import { stripVariants } from '../gallery/strips';

const data = stripVariants['Inside']!;

describe('SizeStrip', () => {
  it('is one picture with the sentence as its name', () => {
    const html = renderToStaticMarkup(
      <SizeStrip data={data} size="large-phone" width={358} name="P5 outside" />,
    );
    expect(html.match(/role="img"/g)).toHaveLength(1);
    expect(html).toContain('aria-label="P5 outside. Size so far 17.999 plus or minus 0.001');
  });

  it('is not read aloud where the same stands beside it in words', () => {
    const html = renderToStaticMarkup(
      <SizeStrip data={data} size="small" width={78} name="P5 outside" decorative />,
    );
    expect(html).toContain('aria-hidden="true"');
    expect(html).not.toContain('role="img"');
  });

  it('has hatches of its own, however many strips are on a page', () => {
    const html = renderToStaticMarkup(
      <>
        <SizeStrip data={data} size="large-phone" width={358} name="P5" />
        <SizeStrip data={data} size="large-phone" width={358} name="P6" />
      </>,
    );
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(ids).toHaveLength(4);
    expect(new Set(ids).size).toBe(4);
    for (const [, id] of html.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(id);
  });

  it('carries no colour of its own: every one comes from the theme', () => {
    for (const variant of Object.values(stripVariants)) {
      const html = renderToStaticMarkup(
        <SizeStrip data={variant} size="large-tablet" width={732} name="P5" />,
      );
      expect(html).not.toMatch(
        /#[0-9a-f]{3,8}\b(?!\w*(guard|partner))|rgb\(|stroke="|fill="(?!url)/i,
      );
    }
  });
});
