'use client';

import { useState, type FormEvent } from 'react';
import type { Fit } from '@/lib/schema/fit';
import { uuidv7 } from '@/lib/outbox/ids';
import { isExternal, isInternal } from '@/lib/rules/feature-sides';
import { fitName } from '@/lib/rules/fit-name';
import { keptWanted } from '@/lib/rules/ways/kept-wanted';
import { readWanted, type FitSaid, type WantedFault } from '@/lib/rules/ways/read-wanted';
import { noSidesWords, onePartWords } from '@/lib/text/fits-sheet-words';
import { FitWayFields } from '../fit-ways/fit-way-fields';
import { saidOfFit } from '../fit-ways/said-of-fit';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import { Field, SelectField } from '../primitives/field';
import styles from './fits.module.css';

type Props = {
  /** The fit that is changed; null makes a new one. */
  fit: Fit | null;
  onDone?: (fitId: string) => void;
  /** Leaves it as it is; not offered where there is nothing to go back to. */
  onLeave?: () => void;
};

/** Says what a fit is: which bore, which shaft, and what they must be to each other. */
export function WantedForm({ fit, onDone, onLeave }: Props) {
  const { view, chosen } = useJob();
  const { make, change, trouble, busy } = useThings();
  const [first] = useState(() => saidOfFit(fit, chosen));
  const [said, setSaid] = useState<FitSaid>(first);
  const [called, setCalled] = useState(fit?.name ?? '');
  const sides = sidesOf();
  const [internalId, setInternalId] = useState(() => fit?.internalFeatureId ?? likely().internal);
  const [externalId, setExternalId] = useState(() => fit?.externalFeatureId ?? likely().external);
  const [wrong, setWrong] = useState<WantedFault | null>(null);

  if (fit === null && (sides.internal.length === 0 || sides.external.length === 0)) {
    return <p className="t-sentence">{noSidesWords}</p>;
  }
  const nominal = (id: string) =>
    view.sheet.features.find((feature) => feature.id === id)?.nominalPm ?? null;
  const onOnePart = partOf(internalId)?.id === partOf(externalId)?.id;
  const borePm = nominal(internalId);
  return (
    <form className={styles.form} noValidate onSubmit={(event) => void keep(event)}>
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
            error={onOnePart ? onePartWords : undefined}
          />
        </>
      )}
      <Field
        label="Called"
        value={called}
        placeholder={nameOf()}
        maxLength={120}
        onChange={(event) => setCalled(event.target.value)}
      />
      <FitWayFields
        said={said}
        borePm={borePm}
        shaftPm={nominal(externalId)}
        shown={chosen}
        wrong={wrong}
        rules={view.sheet.fitRules}
        governsElsewhere={fit !== null}
        onChange={(over) => {
          setWrong(null);
          setSaid((old) => ({ ...old, ...over }));
        }}
        onKeepRule={(rule) => make('fitRule', { id: uuidv7(), ...rule })}
      />
      <div className={styles.buttons}>
        <Button kind="main" type="submit" disabled={busy || (fit === null && onOnePart)}>
          {fit === null ? 'Keep this fit' : 'Keep the change'}
        </Button>
        {onLeave !== undefined && <Button onClick={onLeave}>Leave it as it is</Button>}
      </div>
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

  /** The first bore and the first shaft of two parts that no fit ties yet; else the first of each. */
  function likely(): { internal: string; external: string } {
    for (const internal of sides.internal) {
      for (const external of sides.external) {
        if (partOf(internal.value)?.id === partOf(external.value)?.id) continue;
        const tied = view.fits.some(
          (one) =>
            one.internalFeature.id === internal.value || one.externalFeature.id === external.value,
        );
        if (!tied) return { internal: internal.value, external: external.value };
      }
    }
    return { internal: sides.internal[0]?.value ?? '', external: sides.external[0]?.value ?? '' };
  }

  async function keep(event: FormEvent) {
    event.preventDefault();
    const read = readWanted(said, { nominalPm: borePm, ...chosen });
    // What was not touched is not read back from its figures: they are shown rounded.
    const untouched = fit !== null && JSON.stringify({ ...said, governs: '' }) === untouchedText();
    if (!untouched && read.kind === 'wrong') return setWrong(read.wrong);
    setWrong(null);
    const wanted =
      untouched || read.kind === 'wrong'
        ? { governs: said.governs }
        : fit === null
          ? read.fields
          : keptWanted(fit, first, said, read.fields);
    const name = called.trim() || nameOf();
    const id = fit?.id ?? uuidv7();
    const done =
      fit === null
        ? await make('fit', {
            id,
            jobId: view.sheet.job.id,
            internalFeatureId: internalId,
            externalFeatureId: externalId,
            name,
            ...wanted,
          })
        : await change('fit', fit.id, { version: fit.version, name, ...wanted });
    if (done) onDone?.(id);
  }

  function untouchedText(): string {
    return JSON.stringify({ ...first, governs: '' });
  }

  function partOf(featureId: string) {
    return view.parts.find(({ features }) => features.some(({ id }) => id === featureId))?.part;
  }

  /** "Ram in barrel"; with the name of the bore where another fit is called so already. */
  function nameOf(): string {
    const bore = partOf(internalId)?.name ?? 'bore';
    const shaft = partOf(externalId)?.name ?? 'Shaft';
    const name = fitName(shaft, bore);
    const taken = view.fits.some((one) => one.fit.name === name && one.fit.id !== fit?.id);
    const feature = view.sheet.features.find(({ id }) => id === internalId);
    return taken && feature !== undefined ? fitName(shaft, bore, feature.name) : name;
  }
}
