import { usualChartSettings } from '@/lib/schema/chart-settings';
import type { Run } from '@/lib/schema/run';

/** What a run is charted by until somebody chooses: single pieces, no control chart, two pattern rules, usual settings. */
export const plainRunChoices = {
  alikeIds: [],
  zones: false,
  control: 'none',
  together: 1,
  groupOf: 'pieces',
  baseFrom: null,
  baseTo: null,
  follow: 'flat',
  patterns: ['beyond three sigma', 'nine on one side'],
  ...usualChartSettings,
} satisfies Partial<Run>;
