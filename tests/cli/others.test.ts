import { describe, expect, test } from 'vitest';
import { seedText } from '../kit/seed.ts';
import { changed, cuewright, folderWith, reported } from './command.ts';

const holding = seedText('procedures/holding.yaml');
const direct = seedText('procedures/direct-to.yaml');
const reason = (procedure: ReturnType<typeof reported>['procedures'][number], check: string) =>
  procedure.notChecked.find((each) => each.check === check)?.because;
const limit = (text: string, figure: string) =>
  changed(text, '\nentry:\n', `\nweight-limit: tailwind limit ${figure}\nentry:\n`);

describe('procedures named together', () => {
  test('are compared with each other; one alone is not, and that is told', () => {
    const files = ['seed/procedures/holding.yaml', 'seed/procedures/direct-to.yaml'];
    const [together] = reported(files).procedures;
    expect(together!.checked.rules).toContain('odd-one-out');
    const [alone] = reported(files.slice(0, 1)).procedures;
    expect(reason(alone!, 'odd-one-out')).toBe("the operator's other procedures were not given");
  });

  test('contradict each other: two numbers for one fleet', () => {
    const folder = folderWith({
      'a.yaml': limit(direct, '10 kt'),
      'b.yaml': limit(seedText('procedures/weather-deviation.yaml'), '15 kt'),
      'lib/terms.yaml': seedText('library/terms.yaml'),
    });
    const { procedures } = reported(['a.yaml', 'b.yaml', '--library', 'lib'], '', folder);
    const found = procedures.map(({ findings }) => findings.find(({ check }) => check === 'one-fleet-two-numbers'));
    expect(found.map((each) => each?.witness)).toEqual([
      expect.objectContaining({ first: '10 kt', second: '15 kt' }),
      expect.objectContaining({ first: '15 kt', second: '10 kt' }),
    ]);
  });
});

describe('a library folder', () => {
  const files = {
    'lib/terms.yaml': seedText('library/terms.yaml'),
    'lib/direct-to.yaml': direct,
    'lib/approach.yaml': seedText('procedures/instrument-approach.yaml'),
    'lib/climb.yaml': seedText('procedures/climb-altitude-change.yaml'),
    'lib/fleet.yaml': seedText('fleet.yaml'),
  };

  test('holds procedures and tails beside the library, each told by its format line', () => {
    const folder = folderWith(files);
    const { against, procedures } = reported(['-', '--library', 'lib'], holding, folder);
    expect(against!.library).toEqual({ folder: 'lib', procedures: 3, tails: 9 });
    expect(procedures[0]!.checked.rules).toEqual(expect.arrayContaining(['dead-link', 'odd-one-out']));
    expect(procedures[0]!.findings.filter(({ check }) => check === 'dead-link')).toEqual([]);
    const { out } = cuewright(['check', '-', '--library', 'lib'], holding, folder);
    expect(out.split('\n')[0]).toMatch(/library lib with 3 other procedures and 9 tails$/);
  });

  test('a link to a procedure that it does not hold is dead', () => {
    const without = folderWith({ 'lib/terms.yaml': seedText('library/terms.yaml'), 'lib/direct-to.yaml': direct });
    const [one] = reported(['-', '--library', 'lib'], holding, without).procedures;
    const dead = one!.findings.filter(({ check }) => check === 'dead-link');
    expect(dead.map(({ message }) => message).join()).toContain('"instrument-approach"');
  });

  test('what was heard of it has a name: the same for the same, another after an edit of another procedure', () => {
    const ask = (given: Record<string, string>) =>
      reported(['-', '--library', 'lib'], holding, folderWith(given)).procedures[0]!.checked.library;
    const small = { 'lib/terms.yaml': seedText('library/terms.yaml'), 'lib/direct-to.yaml': direct };
    expect(ask(small)).toMatch(/^[0-9a-f]{16}$/);
    expect(ask(small)).toBe(ask(small));
    expect(ask({ ...small, 'lib/direct-to.yaml': changed(direct, 'object: turn', 'object: bank') })).not.toBe(
      ask(small),
    );
    expect(reported(['-'], holding).procedures[0]!.checked.library).toBeNull();
  });
});
