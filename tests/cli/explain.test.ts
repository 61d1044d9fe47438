import { describe, expect, test } from 'vitest';
import { rules } from '../../lib/check/rules/index.ts';
import { explained } from '../../lib/cli/explain-command.ts';
import { cuewright } from './command.ts';

const said = (...words: string[]): string => {
  const answer = explained(words);
  if (!answer.ok) throw new Error(answer.error);
  return answer.value;
};
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

describe('the manual page', () => {
  test.each(rules.map((rule) => [rule.id, rule] as const))(
    'of %s says all that the check says of itself',
    (id, rule) => {
      const page = flat(said(id));
      const parts = [
        rule.title,
        rule.severity,
        rule.says,
        rule.why,
        rule.source.text,
        rule.examples.bad,
        rule.examples.good,
      ];
      for (const part of [...parts, ...Object.values(rule.messages)]) expect(page).toContain(flat(part));
      expect(page.includes('from memory')).toBe(!rule.source.seen);
      expect(said(String(rule.number))).toBe(said(id));
    },
  );

  test('comes from the command', () => {
    const { code, out } = cuewright(['explain', 'flap-above-limit']);
    expect([code, out]).toEqual([0, said('flap-above-limit')]);
  });
});

describe('the list', () => {
  test('has every check once', () => {
    const lines = said().trimEnd().split('\n');
    expect(lines.at(-1)).toBe(`${rules.length} of ${rules.length} checks`);
    for (const { id } of rules) expect(lines.filter((line) => line.split(/\s+/).includes(id))).toHaveLength(1);
  });

  test('is narrowed by words: severity, kind, phase, text; all of them', () => {
    const stops = rules.filter(({ severity }) => severity === 'STOP').length;
    expect(stops).toBeGreaterThan(3);
    expect(said('stop', 'envelope')).toMatch(/flap-above-limit/);
    expect(said('flap', 'STOP')).not.toMatch(/elastic-words/);
    expect(said('flap', 'stop')).toBe(said('STOP', 'FLAP'));
  });

  test('says when nothing fits, and what was meant', () => {
    expect(explained(['flap-skp'])).toEqual({
      ok: false,
      error: 'No check has flap-skp in it. Did you mean flap-skip?\n',
    });
    const { code, out, err } = cuewright(['explain', 'marmalade']);
    expect([code, out, err]).toEqual([2, '', 'No check has marmalade in it.\n']);
  });
});
