import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('processes/', import.meta.url));

export type Running = {
  child: ChildProcess;
  /** All it has printed so far. */
  output: () => string;
  /** Settles when it has ended, however that was. */
  end: Promise<{
    code: number | null;
    signal: NodeJS.Signals | null;
    output: string;
    errors: string;
  }>;
};

/** Runs a program of test/store/processes on the notebook under test, as another process would. */
export function runProcess(program: string, ...words: string[]): Running {
  return watch(spawn(process.execPath, ['--import', 'tsx', `${folder}${program}`, ...words]));
}

/** The same, with no file allowed to grow beyond so many kilobytes: a full disk, without filling one. */
export function runProcessOnFullDisk(
  kilobytes: number,
  program: string,
  ...words: string[]
): Running {
  // An ignored signal stays ignored in the program; its write then fails like one on a full disk.
  const command = `trap '' XFSZ; ulimit -f ${kilobytes}; exec "$0" "$@"`;
  const node = [process.execPath, '--import', 'tsx', `${folder}${program}`, ...words];
  return watch(spawn('bash', ['-c', command, ...node]));
}

function watch(child: ChildProcess): Running {
  let output = '';
  let errors = '';
  child.stdout!.setEncoding('utf8').on('data', (text: string) => (output += text));
  child.stderr!.setEncoding('utf8').on('data', (text: string) => (errors += text));
  const end = new Promise<Awaited<Running['end']>>((resolve) => {
    child.once('close', (code, signal) => resolve({ code, signal, output, errors }));
  });
  return { child, output: () => output, end };
}
