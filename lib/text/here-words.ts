/** What a page says that was opened without the notebook. `asked`: what the person wanted to open. */
export function hereWords(asked: 'jobs' | 'job' | 'other', jobs: number): string {
  const so =
    asked === 'jobs'
      ? 'The notebook does not answer.'
      : asked === 'job'
        ? 'The notebook does not answer, and this job was never opened on this device.'
        : 'The notebook does not answer, and this sheet needs it.';
  if (jobs === 0)
    return `${so} No job has been opened on this device yet; come back when it answers.`;
  return `${so} These jobs were opened here before: measure and log, and all of it goes into the book when it answers.`;
}
