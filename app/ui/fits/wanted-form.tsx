'use client';

import { useState, type FormEvent } from 'react';
import type { Fit } from '@/lib/schema/fit';
import { uuidv7 } from '@/lib/outbox/ids';
import { isExternal, isInternal } from '@/lib/rules/feature-sides';
import { lengthWords } from '@/lib/text/length-words';
import { clearanceFigure } from '@/lib/text/fit-words';
import { parseClearance } from '@/lib/rules/parse-clearance';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Choice } from '../primitives/choice';
import { Field, SelectField } from '../primitives/field';
import styles from './fits.module.css';

type Props = {
  /** The fit that is changed; null makes a new one. */
  fit: Fit | null;
  onDone?: () => void;
};

/** Says what a fit is: which bore, which shaft, the least and the most clearance, and the aim. */
export function WantedForm({ fit, onDone }: Props) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const figure = (pm: number | undefined) => (pm === undefined ? '' : clearanceFigure(pm, chosen));
  const [text, setText] = useState({
    min: figure(fit?.minPm),
    max: figure(fit?.maxPm),
    aim: figure(fit?.aimPm),
    name: fit?.name ?? '',
  });
  const [governs, setGoverns] = useState<Fit['governs']>(fit?.governs ?? 'extreme');
  const sides = sidesOf();
  const [internalId, setInternalId] = useState(sides.internal[0]?.value ?? '');
  const [externalId, setExternalId] = useState(sides.external[0]?.value ?? '');
  const [errors, setErrors] = useState<Partial<Record<'min' | 'max' | 'aim', string>>>({});

  if (fit === null && (sides.internal.length === 0 || sides.external.length === 0)) {
    return (
      <p className="t-sentence">
        A fit ties a bore or slot to an outside or width. Add both features to the job first.
      </p>
    );
  }
  const field = (key: 'min' | 'max' | 'aim', label: string) => (
    <Field
      label={label}
      hint={chosen.unit}
      inputMode="decimal"
      value={text[key]}
      onChange={(event) => setText({ ...text, [key]: event.target.value })}
      {...(errors[key] === undefined ? {} : { error: errors[key] })}
    />
  );
  return (
    <form className={styles.form} onSubmit={(event) => void keep(event)}>
      {fit === null && (
        <>
          <SelectField
            label="Bore or slot"
            options={sides.internal}
            value={internalId}
            onChange={setInternalId}
          />
          <SelectField
            label="Outside or width"
            options={sides.external}
            value={externalId}
            onChange={setExternalId}
          />
        </>
      )}
      {field('min', 'Least clearance; a minus is interference')}
      {field('max', 'Most clearance')}
      {field('aim', 'Aim; empty is the middle')}
      <Choice
        label="What governs"
        name="governs"
        value={governs}
        onChange={(value) => setGoverns(value === 'mean' ? 'mean' : 'extreme')}
        options={[
          { value: 'extreme', label: 'Smallest bore, largest shaft' },
          { value: 'mean', label: 'Mean sizes' },
        ]}
      />
      <Button kind="main" type="submit" disabled={busy}>
        {fit === null ? 'Keep this fit' : 'Keep the change'}
      </Button>
      {trouble !== null && (
        <p role="alert" className={styles.trouble}>
          {trouble}
        </p>
      )}
    </form>
  );

  function sidesOf() {
    const options = (fits: typeof isInternal) =>
      view.parts.flatMap(({ part, features }) =>
        features
          .filter((feature) => fits(feature.kind))
          .map((feature) => ({
            value: feature.id,
            label: `${part.name}, ${feature.name.toLowerCase()}`,
          })),
      );
    return { internal: options(isInternal), external: options(isExternal) };
  }

  async function keep(event: FormEvent) {
    event.preventDefault();
    const read = parseClearance(text, chosen);
    if (read.kind === 'wrong') {
      setErrors({ [read.field]: lengthWords(read.problem, text[read.field]) });
      return;
    }
    setErrors({});
    const { minPm, maxPm, aimPm } = read;
    const wanted = { way: 'limits', classes: null, minPm, maxPm, aimPm, governs };
    const done =
      fit === null
        ? await make('fit', {
            id: uuidv7(),
            jobId: view.sheet.job.id,
            internalFeatureId: internalId,
            externalFeatureId: externalId,
            name: nameOf(),
            ...wanted,
          })
        : await change('fit', fit.id, { version: fit.version, ...wanted });
    if (done) onDone?.();
  }

  function nameOf(): string {
    const partOf = (featureId: string) =>
      view.parts.find(({ features }) => features.some(({ id }) => id === featureId))?.part.name;
    const shaft = partOf(externalId) ?? 'Shaft';
    return `${shaft} in ${(partOf(internalId) ?? 'bore').toLowerCase()}`;
  }
}
