import { useState, type ReactNode } from 'react';
import { createRoot } from 'react-dom/client';
import '@/app/ui/fonts.css';
import '@/app/ui/tokens.css';
import { Keypad } from '@/app/ui/bench/keypad';
import type { StationCell } from '@/app/ui/bench/station-cells';
import { StationMap } from '@/app/ui/bench/station-map';
import { FitTable } from '@/app/ui/fit-rules/fit-table';
import { FittedFitRules } from '@/app/ui/fit-rules/fitted-fit-rules';
import { Balloon } from '@/app/ui/primitives/balloon';
import { Button } from '@/app/ui/primitives/button';
import { Choice } from '@/app/ui/primitives/choice';
import { EmptyState } from '@/app/ui/primitives/empty-state';
import { Field, SelectField } from '@/app/ui/primitives/field';
import { Panel } from '@/app/ui/primitives/panel';
import { ProgressRule } from '@/app/ui/primitives/progress-rule';
import { Question } from '@/app/ui/primitives/question';
import { jobIndex } from '@/app/ui/primitives/job-index';
import { SheetHead } from '@/app/ui/primitives/sheet-head';
import { TitleBlock } from '@/app/ui/primitives/title-block';
import { WorkingFigure } from '@/app/ui/primitives/working-figure';
import { FittedStrip } from '@/app/ui/strip/fitted-strip';
import { SizeStrip } from '@/app/ui/strip/size-strip';
import { VerdictLine } from '@/app/ui/verdict/verdict-line';
import { VerdictMark } from '@/app/ui/verdict/verdict-mark';
import type { VerdictState } from '@/lib/text/verdict';
import { fanFit, manyFit } from './fit';
import { mm, smallVariants, stripVariants } from './strips';

const theme = new URLSearchParams(location.search).get('theme') ?? 'light';
document.documentElement.dataset['theme'] = theme;
const isWide = window.innerWidth >= 768;
const shown = { unit: 'mm', decimal: '.', resolutionPm: mm(0.001) } as const;

createRoot(document.getElementById('root')!).render(<Gallery />);

function Gallery() {
  return (
    <>
      <Section name="strips">
        <div style={grid(460)}>
          {Object.entries(stripVariants).map(([title, data]) => (
            <Panel key={title} title={title}>
              <FittedStrip data={data} name="P5 outside" />
            </Panel>
          ))}
        </div>
      </Section>
      <Section name="strip-tablet">
        {Object.entries(stripVariants)
          .filter((_, index) => [0, 4, 9, 12].includes(index))
          .map(([title, data]) => (
            <Panel key={title} title={title}>
              <div style={{ overflow: 'auto hidden' }}>
                <SizeStrip data={data} size="large-tablet" width={732} name="L8 bore" />
              </div>
            </Panel>
          ))}
      </Section>
      <Section name="small">
        <div style={grid(240)}>
          {Object.entries(smallVariants).map(([title, data]) => (
            <Panel key={title}>
              <p className="t-label">{title}</p>
              <div style={{ display: 'flex', gap: 16, alignItems: 'center' }}>
                <SizeStrip data={data} size="small" width={100} name="L5 bore" />
                <SizeStrip data={data} size="card" width={100} name="L5 bore" />
              </div>
            </Panel>
          ))}
        </div>
      </Section>
      <Section name="marks">
        <Marks />
      </Section>
      <Section name="fits">
        <Panel>
          <FittedFitRules data={fanFit} />
        </Panel>
        <Panel>
          <FittedFitRules data={manyFit} />
        </Panel>
        <Panel>
          <FitTable data={fanFit} />
        </Panel>
      </Section>
      <Section name="bench">
        <Bench />
      </Section>
      <Section name="stations">
        <Stations />
      </Section>
      <Section name="primitives">
        <Primitives />
      </Section>
    </>
  );
}

function Section({ name, children }: { name: string; children: ReactNode }) {
  return (
    <section
      data-section={name}
      style={{ display: 'grid', gap: 16, padding: 16, background: 'var(--ground)' }}
    >
      {children}
    </section>
  );
}

function grid(least: number) {
  const column = `repeat(auto-fill, minmax(min(${least}px, 100%), 1fr))`;
  return { display: 'grid', gap: 12, gridTemplateColumns: column } as const;
}

function Marks() {
  const states: VerdictState[] = [
    'inside',
    'near',
    'unsure',
    'out',
    'to cut',
    'held',
    'struck',
    'to make',
    'none',
  ];
  return (
    <div style={grid(330)}>
      {states.flatMap((state) =>
        (state === 'near' || state === 'unsure' || state === 'out'
          ? (['bottom', 'top'] as const)
          : [null]
        ).map((side) => (
          <Panel key={`${state} ${side}`}>
            <VerdictMark state={state} side={side} />{' '}
            <VerdictMark state={state} side={side} scale={1.7} />
            <VerdictLine
              {...shown}
              verdict={{ state, side, beyondPm: mm(0.003), limitPm: mm(18) }}
              where="middle, across B"
            />
          </Panel>
        )),
      )}
    </div>
  );
}

function Bench() {
  const [typed, setTyped] = useState('17.99');
  return (
    <div style={{ display: 'grid', gap: 8, background: 'var(--sheet)', padding: 16 }}>
      <VerdictLine {...shown} verdict={{ state: 'inside' }} where="middle, across B" />
      <p className="t-reading">
        <WorkingFigure text="17.999" />
      </p>
      <p className="t-reading">
        <WorkingFigure text="18.498" suspect={[0, 4]} />
      </p>
      <FittedStrip data={stripVariants['Inside']!} name="P5 outside" />
      <StationMap
        kind="outside"
        stations={['Crown', 'Middle', 'Skirt']}
        directions={['A', 'B']}
        cells={cellsOf(['17.999', '17.999', null], ['17.998', '17.999', null])}
        next={{ station: 'Skirt', direction: 'A' }}
        last={{ station: 'Middle', direction: 'B' }}
        onPick={() => {}}
      />
      <p className="t-entry">{typed}</p>
      <Keypad decimal="." onKey={(key) => setTyped((text) => text + key)} />
      <Question
        title="One turn of the thimble?"
        rows={[
          { label: 'As typed', figure: '18.498', suspect: true },
          { label: 'One turn less', figure: '17.998', note: '0.500 a turn' },
          { label: 'The other four', figure: '17.999', note: 'within 0.001' },
        ]}
        says="Kept as typed, left out of the size until you say. Nobody alters it for you."
        answers={[
          { label: 'Measure it again', onAnswer: () => {} },
          { label: 'It is right, count it', onAnswer: () => {} },
          { label: 'It was a slip, strike it out', onAnswer: () => {} },
        ]}
      />
    </div>
  );
}

function cellsOf(...rows: (string | null)[][]): StationCell[][] {
  return rows.map((row) =>
    row.map((text) => ({ text, state: text === null ? 'empty' : 'counted' })),
  );
}

function Stations() {
  const names = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J', 'K', 'L'];
  const filled = (stations: number, directions: number): StationCell[][] =>
    Array.from({ length: directions }, (_, d) =>
      Array.from({ length: stations }, (_unused, s) =>
        d === 0 && s === 1
          ? { text: '18.498', state: 'held' }
          : d === 0 && s === 2
            ? { text: '18.107', state: 'struck' }
            : d + s > 5
              ? { text: null, state: 'empty' }
              : { text: `18.0${10 + d + s}`, state: 'counted' },
      ),
    );
  const map = (
    kind: 'bore' | 'outside' | 'length',
    stations: string[],
    directions: string[],
    low = false,
  ) => (
    <Panel title={`${kind}, ${stations.length} by ${directions.length}${low ? ', low' : ''}`}>
      <StationMap
        kind={kind}
        stations={stations}
        directions={directions}
        cells={filled(stations.length, directions.length)}
        next={{ station: stations.at(-1)!, direction: directions.at(-1)! }}
        last={{ station: stations[0]!, direction: directions[0]! }}
        onPick={() => {}}
        low={low}
      />
    </Panel>
  );
  return (
    <>
      {map('bore', ['Top', 'Middle', 'Bottom'], ['A', 'B'])}
      {map('outside', ['Crown', 'Middle', 'Skirt'], ['A', 'B'], true)}
      {map('length', ['Length'], ['A'])}
      {map('bore', ['Bore'], ['A'])}
      {map(
        'outside',
        names.map((_, index) => `${5 * (index + 1)} mm`),
        ['A', 'B'],
      )}
      {map('outside', ['One', 'Two', 'Three', 'Four', 'Five'], ['A', 'B', 'C'])}
      {map('bore', ['Top'], names)}
    </>
  );
}

function Primitives() {
  const [fit, setFit] = useState<'limits' | 'classes' | 'rule'>('limits');
  const [gauge, setGauge] = useState('mic');
  return (
    <>
      <SheetHead
        job={{ name: 'Hot-air fan, batch of eight' }}
        index={jobIndex('014')}
        current="Fits"
        bench={!isWide}
      />
      <ProgressRule made={43} of={56} />
      <div style={grid(300)}>
        <Panel title="Buttons">
          <div style={{ display: 'grid', gap: 8 }}>
            <Button kind="main">Cut P7</Button>
            <Button>Note an event</Button>
            <Button kind="warm">Measure it again</Button>
            <Button disabled>Nothing to undo</Button>
          </div>
        </Panel>
        <Panel title="Two things to decide" decide>
          <p className="t-sentence">
            <b className="t-figure">P4</b> bush seat is 0.003 large. Turn its bush to suit, or
            sleeve the seat.
          </p>
          <Balloon>4</Balloon> <Balloon live>12</Balloon>
        </Panel>
        <Panel title="Fields">
          <div style={{ display: 'grid', gap: 12 }}>
            <Field label="As drawn" hint="mm" defaultValue="18.000 +0.018 0" />
            <Field
              label="Reading"
              hint="mm"
              bench
              defaultValue="18..2"
              error={'"18..2" is not a size. Type it again; nothing was kept.'}
            />
            <SelectField
              label="Gauge"
              value={gauge}
              onChange={setGauge}
              options={[
                { value: 'mic', label: 'Mic 1, 0 to 25' },
                { value: 'bore', label: 'Bore gauge 1' },
              ]}
            />
            <Choice
              label="The fit is given by"
              value={fit}
              onChange={setFit}
              options={[
                { value: 'limits', label: 'Clearances' },
                { value: 'classes', label: 'Classes', hint: 'H7/g6' },
                { value: 'rule', label: 'A rule' },
              ]}
            />
          </div>
        </Panel>
        <EmptyState sentence="No jobs yet. Start one from a drawing, or bring one in from a file.">
          <Button kind="main">Start a job</Button>
        </EmptyState>
      </div>
      <TitleBlock
        left={[
          { label: 'Sheet', value: '3 Fits' },
          { label: 'Lengths', value: 'mm' },
          { label: 'Sizes at', value: '20 °C' },
          { label: 'Rules drawn', value: '11 500 times full size' },
        ]}
        right={[
          { label: 'Pairs', value: '6 of 8 made' },
          { label: 'By', value: 'M. Hale' },
          { label: 'Kept on this machine', value: '14 March, 11:55' },
        ]}
      />
    </>
  );
}
