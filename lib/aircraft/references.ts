import { number } from '../base/expression.ts';
import { circles } from './circles.ts';
import { namesInFormula, parseFormula } from './formula.ts';
import type { Sheet, SheetProblem } from './sheet.ts';

/** What a well-formed sheet may still get wrong: names of detents, documents, modes and formulas that lead nowhere. */
export function referenceProblems(sheet: Sheet): readonly SheetProblem[] {
  return [
    ...detentProblems(sheet),
    ...documentProblems(sheet),
    ...formulaProblems(sheet),
    ...circles(sheet),
    ...modeProblems(sheet),
  ];
}

function detentProblems(sheet: Sheet): SheetProblem[] {
  const names = sheet.detents.map((detent) => detent.name);
  const problems: SheetProblem[] = [];
  const known = (name: string, at: string) => {
    if (!names.includes(name))
      problems.push({ at, message: `there is no detent ${name}: the sheet has ${names.join(', ')}` });
  };
  for (const [i, name] of names.entries()) {
    if (names.indexOf(name) < i) problems.push({ at: `detents.${i}.name`, message: `detent ${name} is there twice` });
  }
  for (const [i, entry] of sheet.speeds.entries()) {
    for (const [j, name] of entry.detents.entries()) known(name, `speeds.${i}.detents.${j}`);
  }
  for (const [i, entry] of sheet.retractions.entries()) {
    known(entry.from, `retractions.${i}.from`);
    known(entry.to, `retractions.${i}.to`);
  }
  return problems;
}

/** Walks the whole sheet: every `source` names a listed document. */
function documentProblems(sheet: Sheet): SheetProblem[] {
  const problems: SheetProblem[] = [];
  const visit = (value: unknown, at: string): void => {
    if (value === null || typeof value !== 'object') return;
    for (const [key, part] of Object.entries(value)) {
      const place = at === '' ? key : `${at}.${key}`;
      if (key === 'source' && typeof part === 'string') {
        const document = part.split(' ')[0]!;
        if (!(document in sheet.documents)) {
          problems.push({ at: place, message: `"${document}" is not among the documents of the sheet` });
        }
      } else visit(part, place);
    }
  };
  visit({ ...sheet, documents: {} }, '');
  return problems;
}

const SPEEDS = ['VSR', 'VMM', 'V1', 'VR', 'V2', 'VREF'];
const CONSTANTS = [
  'weight',
  'g0',
  'rho0',
  'knot',
  'wingArea',
  'maximumTakeOff',
  'maximumLanding',
  'minimumFlight',
  'VMCA',
  'VMCG',
  'v1Floor',
  'VMO',
  'clMax',
];

function formulaProblems(sheet: Sheet): SheetProblem[] {
  const known = new Set([...CONSTANTS, ...SPEEDS, ...Object.keys(sheet.constants)]);
  return sheet.speeds.flatMap((entry, i) => {
    const at = `speeds.${i}.rule`;
    if (entry.rule.kind === 'table' || entry.rule.kind === 'table2') {
      const by = [entry.rule.by].flat();
      const stranger = by.find((name) => !known.has(name));
      return stranger === undefined ? [] : [{ at: `${at}.by`, message: `nothing is called "${stranger}"` }];
    }
    if (entry.rule.kind !== 'formula') return [];
    const read = parseFormula(entry.rule.text, (name) => (known.has(name) ? number(1) : null));
    if (!read.ok) return [{ at: `${at}.text`, message: `${read.error.message}, at character ${read.error.at + 1}` }];
    const clMax = namesInFormula(entry.rule.text).includes('clMax');
    const without = clMax
      ? entry.detents.filter((name) => sheet.detents.find((one) => one.name === name)?.clMax === null)
      : [];
    return without.map((name) => ({
      at: `${at}.text`,
      message: `the formula uses clMax, and detent ${name} has none`,
    }));
  });
}

function modeProblems(sheet: Sheet): SheetProblem[] {
  const { modes } = sheet;
  const words: Readonly<Record<string, readonly string[]>> = {
    thrust: modes.thrust,
    lateral: modes.lateral,
    vertical: modes.vertical,
    rel: modes.rel,
    phase: modes.phase,
    armed_vertical: modes.armedVertical,
    armed_lateral: modes.armedLateral,
    holds: Object.keys(modes.predicates ?? {}),
    fails: Object.keys(modes.predicates ?? {}),
  };
  const problems: SheetProblem[] = [];
  for (const [i, rule] of modes.rules.entries()) {
    const cases = 'any' in rule ? rule.any : [rule];
    for (const one of cases) {
      for (const [axis, guard] of Object.entries(one.when)) {
        for (const word of Object.values(guard ?? {}).flat() as string[]) {
          if (words[axis]?.includes(word)) continue;
          problems.push({
            at: `modes.rules.${i}.when.${axis}`,
            message: `rule ${rule.id}: ${word} is no word of ${axis}`,
          });
        }
      }
      for (const axis of ['thrust', 'lateral', 'vertical', 'rel', 'phase'] as const) {
        const word = one.then[axis];
        if (word === undefined || words[axis]!.includes(word)) continue;
        problems.push({
          at: `modes.rules.${i}.then.${axis}`,
          message: `rule ${rule.id}: ${word} is no word of ${axis}`,
        });
      }
    }
  }
  return problems;
}
