'use client';

import { useState } from 'react';
import { dialUnit } from '@/lib/rules/cuts/slide';
import { typedDialUnit, typedSlide, type TypedSlide } from '@/lib/rules/cuts/typed-slide';
import { slideFaultWords } from '@/lib/text/cut-screen-words';
import { divisionHint } from '@/lib/text/cut-words';
import type { Shown } from '@/lib/text/shown-size';
import { unitWords } from '@/lib/text/unit-words';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';
import styles from './cut.module.css';
import { slideKept, slideTyped } from './slide-typed';
import type { CutSaying } from './use-cut-said';

type Props = {
  saying: CutSaying;
  shown: Shown;
  /** It is asked for: nothing can be put on a dial that nobody has told of. */
  isNew: boolean;
  onDone: () => void;
};

/** The slide the cut is put on with, and what else no reading tells; kept on this device. */
export function SetUp({ saying, shown, isNew, onDone }: Props) {
  const [before] = useState(() => ({ ...saying.said, dialAtPm: saying.dialAtPm }));
  const [typed, setTyped] = useState<TypedSlide>(() => slideTyped(before, shown));
  const setting = {
    ...shown,
    dialUnit: before.slide === null ? shown.unit : dialUnit(before.slide, shown.unit),
  };
  const [wrong, setWrong] = useState<readonly string[]>([]);
  const field = (name: Exclude<keyof TypedSlide, 'dial' | 'tool'>) => ({
    bench: true,
    value: typed[name],
    inputMode: 'decimal' as const,
    autoComplete: 'off',
    onChange: (event: { target: { value: string } }) =>
      setTyped({ ...typed, [name]: event.target.value }),
    ...(wrong.includes(name) ? { error: slideFaultWords[name] } : {}),
  });

  function keep(): void {
    const read = typedSlide(typed, setting, slideKept(before, shown));
    if (read.kind === 'wrong') {
      setWrong(read.fields);
      return;
    }
    setWrong([]);
    saying.saySlide(read.slide);
    saying.sayLap(read.lapPm);
    saying.sayDialAt(read.dialAtPm);
    onDone();
  }

  const onDial = typedDialUnit(typed.division, setting);
  return (
    <form
      className={styles.setUp}
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <Choice
        bench
        label="The dial counts"
        name="dial"
        value={typed.dial}
        onChange={(dial) => setTyped({ ...typed, dial })}
        options={[
          { value: 'radius', label: 'the radius', hint: 'twice as much comes off' },
          { value: 'diameter', label: 'the diameter', hint: 'as much comes off' },
        ]}
      />
      <Field
        label="One division"
        hint={divisionHint(setting.dialUnit, shown.decimal)}
        {...field('division')}
      />
      <Field
        label="Thinnest cut this tool bites"
        hint={`${unitWords(onDial)} on the dial`}
        {...field('bites')}
      />
      <Field
        label="Leave on to lap"
        hint={`${unitWords(shown.unit)} on diameter`}
        {...field('lap')}
      />
      <Field label="The dial stands at" hint="empty: set to 0 each time" {...field('dialAt')} />
      <Field
        label="Top slide set over"
        hint="10 at 5.74 degrees; empty: square"
        {...field('fineFeed')}
      />
      <Field
        label="Machine or tool, by name"
        hint="where two have one dial"
        bench
        value={typed.tool}
        maxLength={120}
        autoComplete="off"
        onChange={(event) => setTyped({ ...typed, tool: event.target.value })}
      />
      <Button type="submit" bench kind={isNew ? 'main' : 'plain'}>
        This is the slide
      </Button>
    </form>
  );
}
