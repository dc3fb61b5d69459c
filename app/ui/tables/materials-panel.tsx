'use client';

import type { Material } from '@/lib/schema/material';
import { starterMaterials } from '@/lib/rules/heat/starter-materials';
import { expansionFigure, expansionRangeWords } from '@/lib/text/heat-words';
import type { DecimalMark } from '@/lib/units/picometres';
import { MaterialForm } from './material-form';
import { OwnTable } from './own-table';
import styles from './tables.module.css';

type Props = { own: readonly Material[]; decimal: DecimalMark };

/** How much each material grows with heat, between what, and who says so; the shop's own first. */
export function MaterialsPanel({ own, decimal }: Props) {
  return (
    <OwnTable
      title="Materials"
      note="expansion, millionths a degree C"
      address="materials"
      add="Add a material of your own"
      own={own}
      lineOf={(row) => ({
        figure: expansionFigure(row.expansionNanoPerC, { decimal }),
        range: expansionRangeWords(row, { decimal }),
        remark: row.source,
      })}
      starters={starterMaterials.map((row) => ({
        key: row.key,
        name: row.name,
        figure: expansionFigure(row.expansionNanoPerC, { decimal }),
        range: expansionRangeWords(row, { decimal }),
        remark: `${row.over}. ${row.source}`,
      }))}
      renderForm={(given) => <MaterialForm {...given} decimal={decimal} />}
    >
      <p className={styles.remark}>
        Another batch of the same name may differ by more than the range. What a hot figure is made
        of is an estimate.
      </p>
    </OwnTable>
  );
}
