'use client';

import { useState } from 'react';
import { FitTable } from '../fit-rules/fit-rules';
import type { FitRulesData } from '../fit-rules/fit-rules-data';
import { Twin } from '../primitives/twin';

/** What the two rules show, in a table; made when it is opened, as it may have hundreds of rows. */
export function TwinTable({ data }: { data: FitRulesData }) {
  const [isOpen, setOpen] = useState(false);
  return <Twin onToggle={setOpen}>{isOpen && <FitTable data={data} />}</Twin>;
}
