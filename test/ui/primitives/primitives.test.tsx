import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Button } from '@/app/ui/primitives/button';
import { Choice } from '@/app/ui/primitives/choice';
import { EmptyState } from '@/app/ui/primitives/empty-state';
import { Field, SelectField, TextField } from '@/app/ui/primitives/field';
import { Panel } from '@/app/ui/primitives/panel';
import { ProgressRule } from '@/app/ui/primitives/progress-rule';
import { Question } from '@/app/ui/primitives/question';
import { jobIndex } from '@/app/ui/primitives/job-index';
import { SheetHead } from '@/app/ui/primitives/sheet-head';
import { Table } from '@/app/ui/primitives/table';
import { TitleBlock } from '@/app/ui/primitives/title-block';
import { WorkingFigure } from '@/app/ui/primitives/working-figure';

const words = (html: string) =>
  html
    .replace(/<[^>]+>/g, '|')
    .replace(/\|+/g, '|')
    .replace(/^\||\|$/g, '');

describe('WorkingFigure', () => {
  it.each([
    ['17.999', '17.|999'],
    ['17,999', '17,|999'],
    ['+0.002', '+0.|002'],
    ['18', '18'],
  ])('sets the decimals of %s apart, for they carry the work', (text, split) => {
    expect(words(renderToStaticMarkup(<WorkingFigure text={text} />))).toBe(split);
  });

  it('sets the suspected digits of a held reading apart', () => {
    const html = renderToStaticMarkup(<WorkingFigure text="18.498" suspect={[3, 4]} />);
    expect(words(html)).toBe('18.|4|98');
  });
});

describe('Button', () => {
  it('does not send a form unless it is told to', () => {
    expect(renderToStaticMarkup(<Button>Log</Button>)).toContain('type="button"');
    expect(renderToStaticMarkup(<Button type="submit">Log</Button>)).toContain('type="submit"');
  });

  it('has the second focus line only where it is solid', () => {
    expect(renderToStaticMarkup(<Button kind="main">Cut P7</Button>)).toMatch(/class="[^"]*solid/);
    expect(renderToStaticMarkup(<Button>Note</Button>)).not.toMatch(/class="[^"]*solid/);
  });
});

describe('Field', () => {
  it('ties label, hint and error to the box, and keeps what was typed', () => {
    const html = renderToStaticMarkup(
      <Field id="size" label="Size" hint="mm" error="Type it again." defaultValue="18..2" />,
    );
    expect(html).toContain('<label for="size">Size</label>');
    expect(html).toContain('aria-describedby="size-hint size-error"');
    expect(html).toContain('aria-invalid="true"');
    expect(html).toMatch(/id="size-error"[^>]*role="alert"[^>]*>Type it again\./);
    expect(html).toContain('value="18..2"');
  });

  it('says nothing of errors where there is none', () => {
    const html = renderToStaticMarkup(<Field id="size" label="Size" />);
    expect(html).not.toMatch(/aria-(invalid|describedby)|role="alert"/);
  });

  it('is the same for several lines and for one of many', () => {
    const lines = renderToStaticMarkup(<TextField id="why" label="Why" error="Say why." />);
    const many = renderToStaticMarkup(
      <SelectField
        id="gauge"
        label="Gauge"
        value="b"
        onChange={() => {}}
        options={[
          { value: 'a', label: 'Mic 1' },
          { value: 'b', label: 'Mic 2' },
        ]}
      />,
    );
    expect(lines).toContain('aria-describedby="why-error"');
    expect(many).toMatch(/<option value="b" selected="">Mic 2/);
  });
});

describe('Choice', () => {
  it('is a named group of radios of which one is chosen', () => {
    const html = renderToStaticMarkup(
      <Choice
        label="Fit"
        name="fit"
        value="b"
        onChange={() => {}}
        options={[
          { value: 'a', label: 'Clearances' },
          { value: 'b', label: 'Classes' },
        ]}
      />,
    );
    expect(html).toMatch(/<legend[^>]*>Fit<\/legend>/);
    expect(html.match(/type="radio"/g)).toHaveLength(2);
    expect(html.match(/checked=""/g)).toHaveLength(1);
    expect(html).toMatch(/name="fit"[^>]*checked="" value="b"|value="b"[^>]*checked=""/);
  });
});

describe('Table', () => {
  it('has a caption, and can be slid by keys only where it is wider than its sheet', () => {
    const rows = (
      <tbody>
        <tr>
          <td>1</td>
        </tr>
      </tbody>
    );
    const plain = renderToStaticMarkup(<Table caption="Links">{rows}</Table>);
    expect(plain).toMatch(/<caption[^>]*>Links<\/caption>/);
    expect(plain).not.toContain('tabindex');
    const pinned = renderToStaticMarkup(
      <Table caption="Board" pinned captionHidden>
        {rows}
      </Table>,
    );
    expect(pinned).toContain('aria-label="Board" tabindex="0"');
    expect(pinned).toContain('<caption class="unseen">');
  });
});

describe('ProgressRule', () => {
  it('has a tick a piece, longer at 5 and 10, and the blue line at the pieces made', () => {
    const html = renderToStaticMarkup(<ProgressRule made={43} of={56} />);
    expect(html).toContain('aria-label="43 of 56 pieces"');
    const ticks = [...html.matchAll(/x1="([\d.]+)%" y1="1" x2="[\d.]+%" y2="(\d+)"/g)].map(
      ([, x, y]) => [Number(x), Number(y)],
    );
    expect(ticks).toHaveLength(57 + 1);
    expect(ticks.slice(0, 57).map(([, y]) => y)).toEqual(
      Array.from({ length: 57 }, (_, n) => (n % 10 === 0 ? 14 : n % 5 === 0 ? 10 : 6)),
    );
    expect(ticks[57]).toEqual([expect.closeTo((100 * 43) / 56, 9), 19]);
  });

  it('does not run its ticks together for a long batch', () => {
    const html = renderToStaticMarkup(<ProgressRule made={10} of={1000} />);
    expect(html.match(/<line/g)!.length).toBeLessThan(110);
  });

  it('is a bare rule where nothing is to be made', () => {
    expect(renderToStaticMarkup(<ProgressRule made={0} of={0} />)).not.toContain('svg');
  });
});

describe('SheetHead', () => {
  const html = renderToStaticMarkup(
    <SheetHead job={{ name: 'Hot-air fan' }} index={jobIndex('014')} current="Fits" />,
  );

  it('shows the sheets there are, by their numbers; chains keep 4 and the record 7', () => {
    expect(jobIndex('014').map(({ number, label }) => `${number} ${label}`)).toEqual([
      '1 Board',
      '2 Bench',
      '3 Fits',
      '5 Runs',
      '6 Gauges',
    ]);
    expect(jobIndex('014')[0]!.href).toBe('/jobs/014/board');
  });

  it('says which sheet is open, and which key goes to each', () => {
    expect(html.match(/aria-current="page"/g)).toHaveLength(1);
    expect(html).toMatch(/aria-keyshortcuts="Alt\+3"[^>]*aria-current="page"/);
    expect(html).toContain('aria-keyshortcuts="Alt+6"');
  });

  it('has no keys where the entries have no numbers', () => {
    const plain = renderToStaticMarkup(
      <SheetHead index={[{ label: 'Jobs', href: '/' }]} current="Jobs" />,
    );
    expect(plain).not.toContain('aria-keyshortcuts');
  });
});

describe('Question', () => {
  const html = renderToStaticMarkup(
    <Question
      title="One turn of the thimble?"
      rows={[
        { label: 'As typed', figure: '18.498', suspect: true },
        { label: 'One turn less', figure: '17.998', note: '0.500 a turn' },
      ]}
      says="Kept as typed."
      answers={['Measure it again', 'It is right, count it', 'It was a slip, strike it out'].map(
        (label) => ({ label, onAnswer: () => {} }),
      )}
    />,
  );

  it('has its arithmetic, what it stands on and three answers, the first of them solid', () => {
    expect(words(html)).toBe(
      'One turn of the thimble?|As typed|18.498|One turn less|17.998|0.500 a turn|' +
        'Kept as typed.|Measure it again|It is right, count it|It was a slip, strike it out',
    );
    expect(html.match(/class="[^"]*solid[^"]*"/g)).toHaveLength(1);
  });

  it('is named by its question and takes the focus itself, so that Enter answers nothing', () => {
    const [, id] = /role="alertdialog" aria-labelledby="([^"]+)"/.exec(html)!;
    expect(html).toMatch(new RegExp(`<h2 id="${id}"[^>]*tabindex="-1"`));
  });
});

describe('Panel, TitleBlock and EmptyState', () => {
  it('name a panel by its title', () => {
    const html = renderToStaticMarkup(<Panel title="Departure 1">Bar to hand.</Panel>);
    const [, id] = /aria-labelledby="([^"]+)"/.exec(html)!;
    expect(html).toContain(`<h2 id="${id}"`);
  });

  it('pair each label of the block with its value', () => {
    const html = renderToStaticMarkup(
      <TitleBlock
        left={[{ label: 'Lengths', value: 'mm' }]}
        right={[{ label: 'By', value: 'M. Hale' }]}
      />,
    );
    expect(words(html)).toBe('Lengths|mm|By|M. Hale');
    expect(html.match(/<dt/g)).toHaveLength(2);
  });

  it('say what is so in one sentence', () => {
    const html = renderToStaticMarkup(
      <EmptyState sentence="No jobs yet.">
        <Button>Start a job</Button>
      </EmptyState>,
    );
    expect(words(html)).toBe('No jobs yet.|Start a job');
  });
});
