'use client';

import { useState } from 'react';
import { useJob } from '../job/job-provider';
import { SheetFrame } from '../job/sheet-frame';
import { LinkButton } from '../primitives/link-button';
import { DepartureForm } from './departure-form';
import { Entry } from './entry';
import { FeatureForm } from './feature-form';
import { JobForm } from './job-form';
import { PartForm } from './part-form';
import { StruckFeatures, StruckParts } from './struck-lines';
import styles from './edit.module.css';

/** The job as drawn: everything written down from the drawing, each thing with its own form. */
export function EditSheet() {
  const { view } = useJob();
  const [open, setOpen] = useState<string | null>(null);
  const close = () => setOpen(null);
  const departures = view.sheet.departures.filter((departure) => departure.struckAt === null);
  return (
    <SheetFrame current="Board" number={1}>
      <div className={styles.head}>
        <h1>The job as drawn</h1>
        <LinkButton href={`/jobs/${view.sheet.job.id}/board`}>Back to the board</LinkButton>
      </div>
      <Entry
        open={open}
        onOpen={setOpen}
        id="job"
        title={view.sheet.job.name}
        remark="name, drawing, unit"
      >
        <JobForm onDone={close} />
      </Entry>
      {view.parts.map(({ part, features }) => (
        <section key={part.id} className={styles.part} aria-label={part.name}>
          <Entry
            open={open}
            onOpen={setOpen}
            id={part.id}
            title={part.name}
            remark={`${part.quantity} wanted, ${part.prefix}1 and on`}
          >
            <PartForm part={part} onDone={close} />
          </Entry>
          {features.map((feature) => (
            <Entry
              open={open}
              onOpen={setOpen}
              key={feature.id}
              id={feature.id}
              title={`${feature.balloon} ${feature.name}`}
              remark={feature.asDrawn}
            >
              <FeatureForm part={part} feature={feature} onDone={close} />
            </Entry>
          ))}
          <StruckFeatures partId={part.id} />
          <Entry
            open={open}
            onOpen={setOpen}
            id={`new ${part.id}`}
            title="Another feature"
            remark={part.name}
          >
            <FeatureForm part={part} feature={null} onDone={close} />
          </Entry>
        </section>
      ))}
      <StruckParts />
      <Entry open={open} onOpen={setOpen} id="new part" title="Another part" remark="">
        <PartForm part={null} onDone={close} />
      </Entry>
      <section className={styles.part} aria-label="Departures">
        {departures.map((departure) => (
          <Entry
            open={open}
            onOpen={setOpen}
            key={departure.id}
            id={departure.id}
            title={`Departure ${departure.number}`}
            remark={departure.made}
          >
            <DepartureForm departure={departure} onDone={close} />
          </Entry>
        ))}
        <Entry
          open={open}
          onOpen={setOpen}
          id="new departure"
          title="Another departure"
          remark="made other than drawn"
        >
          <DepartureForm departure={null} onDone={close} />
        </Entry>
      </section>
    </SheetFrame>
  );
}
