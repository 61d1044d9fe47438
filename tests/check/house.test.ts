import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rules } from '../../lib/check/rules/index.ts';

const check = new URL('../../lib/check/', import.meta.url);
const source = (folder: URL): { name: string; text: string }[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), 'utf8') }));
const inRules = source(new URL('rules/', check)).filter(({ name }) => name !== 'index.ts');
const all = [...source(check), ...inRules];

const REASON_RULES = 'rules never import rules: what two of them need stands in a file of its own in lib/check';
const REASON_WEIGHTS =
  'the worst weight may lie in the middle of the range: questions over weights go to the prover, never to a loop';

const importsRule = (text: string): boolean => /from '\.\/|from '\.\.\/rules\//.test(text);
/** A loop that counts up in a variable called after weight, or steps from one weight to another. */
const loopsOverWeights = (text: string): boolean =>
  /for \((let|const) \w*(weight|tonnes|mass|kg)\w*\b/i.test(text) ||
  /\b(step|increment)\w*\s*=\s*[\d_]+;?\s*\/\/.*weight/i.test(text) ||
  /(weights|tonnes)\.(map|forEach|some|every|flatMap)\(/i.test(text);

it('sees every file', () => {
  expect(inRules.length).toBe(rules.length);
  expect(all.length).toBeGreaterThan(20);
});

it('no rule imports a rule', () => {
  const bad = inRules.filter(({ text }) => importsRule(text)).map(({ name }) => name);
  expect(bad, REASON_RULES).toEqual([]);
  expect(importsRule("import { x } from './flap-skip.ts';")).toBe(true);
});

it('nothing in lib/check loops over weights', () => {
  const bad = all.filter(({ text }) => loopsOverWeights(text)).map(({ name }) => name);
  expect(bad, REASON_WEIGHTS).toEqual([]);
  expect(loopsOverWeights('for (let weight = 46_000; weight <= 78_600; weight += 1_000) {')).toBe(true);
});

it('each rule is a short file, called after its id, with a number of its own and something to read', () => {
  for (const { name, text } of inRules) expect(text.split('\n').length, name).toBeLessThanOrEqual(91);
  expect(rules.map((rule) => `${rule.id}.ts`).sort()).toEqual(inRules.map(({ name }) => name).sort());
  expect(new Set(rules.map((rule) => rule.number)).size).toBe(rules.length);
  expect(rules.map((rule) => rule.number)).toEqual([...rules.map((rule) => rule.number)].sort((a, b) => a - b));
  for (const rule of rules)
    expect([rule.title, rule.says, rule.why, rule.source.text].every(Boolean), rule.id).toBe(true);
});
