import { describe, expect, it } from 'vitest';
import { readFileSync } from 'node:fs';
import { requireNode } from '@/lib/command/require-node.mjs';

describe('requireNode', () => {
  it('asks for the version that package.json names', () => {
    const { engines } = JSON.parse(readFileSync('package.json', 'utf8')) as {
      engines: { node: string };
    };
    const least = engines.node.replace('>=', '');
    expect(() => requireNode(`${least}.0`)).not.toThrow();
    expect(() => requireNode('1.0.0')).toThrow(`needs Node ${least} or newer; this is Node 1.0.0`);
  });

  it.each(['20.19.0', '20.20.2', '22.0.0', '100.1.0'])('accepts %s', (version) => {
    expect(() => requireNode(version)).not.toThrow();
  });

  it.each(['20.18.3', '18.20.8', '20.2.0'])('refuses %s', (version) => {
    expect(() => requireNode(version)).toThrow(`this is Node ${version}`);
  });
});
