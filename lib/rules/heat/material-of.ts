import type { Material } from '@/lib/schema/material';
import { starterMaterials, type HeatMaterial } from './starter-materials';

export type MatchedMaterial = {
  material: HeatMaterial;
  /** `own` and `table` were named outright; `likely` is a guess from a word in the name. */
  how: 'own' | 'table' | 'likely';
};

/**
 * The material a part's free text names: one of the shop's own first, then the table by name, then what a
 * word in the text makes likely, the longest word first. Null where nothing is known of it.
 */
export function materialOf(text: string, own: readonly Material[]): MatchedMaterial | null {
  const asked = plain(text);
  if (asked === '') return null;
  const mine = own.find(({ name, struckAt }) => struckAt === null && plain(name) === asked);
  if (mine !== undefined) return { material: heatOf(mine), how: 'own' };
  const named = starterMaterials.find(({ name, names }) =>
    [name, ...names].some((one) => plain(one) === asked),
  );
  if (named !== undefined) return { material: named, how: 'table' };
  const words = starterMaterials.flatMap((material) =>
    material.likely.map((word) => ({ material, word: plain(word) })),
  );
  const found = words
    .filter(({ word }) => ` ${asked} `.includes(` ${word} `))
    .sort((a, b) => b.word.length - a.word.length)[0];
  return found === undefined ? null : { material: found.material, how: 'likely' };
}

/** Every material there is to choose from: the shop's own first. */
export function materialsKnown(own: readonly Material[]): HeatMaterial[] {
  const mine = own.filter(({ struckAt }) => struckAt === null).map(heatOf);
  const taken = new Set(mine.map(({ name }) => plain(name)));
  return [...mine, ...starterMaterials.filter(({ name }) => !taken.has(plain(name)))];
}

function heatOf(row: Material): HeatMaterial {
  const { id, name, expansionNanoPerC, lowNanoPerC, highNanoPerC, source } = row;
  return { key: id, name, expansionNanoPerC, lowNanoPerC, highNanoPerC, over: '', source };
}

function plain(text: string): string {
  return text
    .toLowerCase()
    .replaceAll(/[\s,;()]+/g, ' ')
    .trim();
}
