import { lengthWords } from './length-words';

type Fault = {
  field: string;
  problem: 'missing' | 'not above zero' | 'range' | Parameters<typeof lengthWords>[0];
};

/** What has to be put right in a gauge that is being written down. */
export function gaugeFaultWords({ field, problem }: Fault, text: string): string {
  if (problem === 'missing') {
    return field === 'name' ? 'A gauge needs a name.' : 'Say the smallest step it shows.';
  }
  if (problem === 'not above zero') return 'This must be more than nothing.';
  if (problem === 'range') return 'The end must be more than the beginning.';
  return lengthWords(problem, text);
}
