import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { compareCase, type Case, type Figure } from './compare';
import type { ReferenceSet, Topic } from './topics/topic';

/** The judged figures of one reference file. */
export type FileReport = {
  file: string;
  topic: string;
  /** False when no topic carries that text: every figure is then not covered. */
  isAnswered: boolean;
  figures: { id: string; figure: Figure; why: string | undefined }[];
};

/**
 * Answers every case of every JSON file in a folder and judges the answers.
 *
 * A topic is found by the `topic` text of the file. A case that throws counts each of its figures
 * as failed. `only` keeps the files whose name starts with it.
 */
export function checkFolder(folder: string, topics: readonly Topic[], only = ''): FileReport[] {
  const read = (file: string) =>
    JSON.parse(readFileSync(join(folder, file), 'utf8')) as Record<string, unknown>;
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json') && name.startsWith(only))
    .sort()
    .map((file) => checkFile({ file, data: read(file), read }, topics));
}

function checkFile(set: ReferenceSet, topics: readonly Topic[]): FileReport {
  const name = String(set.data.topic);
  const topic = topics.find((candidate) => candidate.topic === name);
  const figures = casesOf(set.data).flatMap((one) => {
    const { answer, why } = answered(topic, one, set);
    const tolerance = one.tolerance ?? set.data.tolerance;
    return compareCase({ ...one, tolerance }, answer).map((figure) => ({
      id: String(one.id),
      figure: why === undefined ? figure : { ...figure, state: 'failed' as const },
      why,
    }));
  });
  return { file: set.file, topic: name, isAnswered: topic !== undefined, figures };
}

type ReferenceCase = Case & { id?: unknown; inputs?: Record<string, unknown> };

function answered(topic: Topic | undefined, one: ReferenceCase, set: ReferenceSet) {
  if (topic === undefined) return { answer: {}, why: undefined };
  try {
    return { answer: topic.answer(resolved(one.inputs ?? {}, set), set), why: undefined };
  } catch (error) {
    return { answer: {}, why: String(error) };
  }
}

/** Inputs with what they point at put in: the data of another case or file, the inputs of a case. */
function resolved(inputs: Record<string, unknown>, set: ReferenceSet): Record<string, unknown> {
  if (typeof inputs.dataset === 'string') {
    const data = typeof inputs.file === 'string' ? set.read(inputs.file) : set.data;
    const there = find(data, inputs.dataset);
    return { ...inputs, x: there.data ?? there.x };
  }
  if (typeof inputs.case === 'string') return { ...find(set.data, inputs.case), ...inputs };
  return inputs;
}

function find(data: Record<string, unknown>, id: string): Record<string, unknown> {
  const found = casesOf(data).find((one) => one.id === id);
  if (found === undefined) throw new Error(`no case is called ${id}`);
  return found.inputs ?? {};
}

function casesOf(data: Record<string, unknown>): ReferenceCase[] {
  return (data.cases ?? []) as ReferenceCase[];
}
