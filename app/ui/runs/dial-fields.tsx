import { isOnDiameter, type FeatureKind } from '@/lib/schema/feature-kinds';
import { useJob } from '../job/job-provider';
import { Choice } from '../primitives/choice';
import { Field } from '../primitives/field';

export type Dial = 'radius' | 'diameter';

type Props = {
  kind: FeatureKind;
  dial: Dial;
  onDial: (dial: Dial) => void;
  division: string;
  onDivision: (text: string) => void;
  error: string | undefined;
};

/** What the slide's dial counts, and one division of it. A length is what it is: nothing to choose. */
export function DialFields({ kind, dial, onDial, division, onDivision, error }: Props) {
  const { chosen } = useJob();
  return (
    <>
      {isOnDiameter(kind) && (
        <Choice
          label="The slide's dial counts"
          value={dial}
          onChange={onDial}
          options={[
            { value: 'radius', label: 'Radius' },
            { value: 'diameter', label: 'Diameter' },
          ]}
        />
      )}
      <Field
        label="One division of it"
        hint={chosen.unit}
        inputMode="decimal"
        value={division}
        onChange={(event) => onDivision(event.target.value)}
        error={error}
      />
    </>
  );
}
