// A procedure composed with the table, as a Promela model: the same places, slips and surprises, written from the table's own
// guards. Only for settings that take any outcome of a hand, since what a crew means is no part of such a model.
import type { ModeSet } from '../aircraft/mode-set.ts';
import { assert } from '../base/assert.ts';
import { parseGate } from '../gate/parse.ts';
import type { Gate } from '../gate/syntax.ts';
import type { Composed } from './compose.ts';
import type { Line } from './layout.ts';
import { slipsOf } from './moves.ts';
import { outcomeTexts, variablesText } from './promela.ts';
import type { Place } from './script.ts';
import { asksTheLine } from './truth.ts';

const AXIS = { thrust: 'th', lateral: 'la', vertical: 've' } as const;

/** An expression for "certainly" or for "not certainly not", as the truth of a gate on the mode line has three values. */
function gateText(gate: Gate | null, modes: ModeSet, certainly: boolean): string {
  const open = certainly ? 'false' : 'true';
  if (gate === null || !asksTheLine(gate, modes)) return open;
  switch (gate.kind) {
    case 'mode':
      return `(${gate.words.map((word) => `${AXIS[gate.axis]} == ${modes[gate.axis].indexOf(word)}`).join(' || ')})`;
    case 'armed': {
      const vertical = modes.armedVertical.indexOf(gate.word);
      const lateral = modes.armedLateral.indexOf(gate.word);
      return `((av & ${vertical < 0 ? 0 : 1 << vertical}) != 0 || (al & ${lateral < 0 ? 0 : 1 << lateral}) != 0)`;
    }
    case 'not':
      return `!(${gateText(gate.of, modes, !certainly)})`;
    case 'within':
      return gateText(gate.of, modes, certainly);
    case 'all':
    case 'any':
      return `(${gate.of.map((part) => gateText(part, modes, certainly)).join(gate.kind === 'all' ? ' && ' : ' || ')})`;
    case 'trend': {
      const among = (words: readonly string[]): string =>
        `(${words.map((word) => `ve == ${modes.vertical.indexOf(word)}`).join(' || ') || 'false'})`;
      const along = among(gate.way === 'increasing' ? modes.climbing : modes.descending);
      const against = among([
        ...(gate.way === 'increasing' ? modes.descending : modes.climbing),
        ...(modes.levels ?? []),
      ]);
      return certainly ? along : `!${against}`;
    }
    case 'event': {
      const rule = modes.rules.find((one) => one.event === gate.text);
      const phase = rule === undefined || 'any' in rule ? undefined : rule.then.phase;
      return phase === undefined ? open : `(ph == ${modes.phase.indexOf(phase)})`;
    }
    default:
      return open;
  }
}

type Option = { readonly guard: string; readonly deeds: readonly string[] };

export function promelaComposed(composed: Composed): string {
  const { graph, script, setting, system } = composed;
  const { modes, standard } = graph.machine;
  assert(!setting.believe, 'a model of what the crew means can not be written');
  const options: Option[] = [];
  const notFalse = (text: string): string =>
    text.trim() === '' ? 'true' : gateText(parseGate(text).gate, modes, false);
  const certain = (text: string): string =>
    text.trim() === '' ? 'false' : gateText(parseGate(text).gate, modes, true);
  const outcomesOfRule = (rule: ModeSet['rules'][number]): readonly Option[] =>
    ('any' in rule ? rule.any : [rule]).flatMap((part) => outcomeTexts(modes, standard, part));
  const add = (guards: readonly string[], deeds: readonly string[]): void => {
    options.push({ guard: guards.map((guard) => `(${guard})`).join(' && '), deeds });
  };

  /** What the hand of a place does: every outcome of its rules, nothing where none of them acts, and a knob that is right already. */
  const handOptions = (place: Place): readonly Option[] => {
    if (place.rules === null) return [{ guard: 'true', deeds: [] }];
    const rules = place.rules.map((rule) => modes.rules[rule]!);
    const all = rules.flatMap(outcomesOfRule);
    const idle = rules.flatMap((rule) => {
      const sides = ('any' in rule ? rule.any : [rule]).flatMap(({ then }) =>
        then.only_if_rel_changes ? (then.rel_each ?? []) : [],
      );
      const there = sides.map((side) => `rel == ${modes.rel.indexOf(side)}`).join(' || ') || 'false';
      return outcomesOfRule(rule).map(({ guard }) => ({ guard: `(${guard}) && (${there})`, deeds: [] }));
    });
    const some = (list: readonly Option[]): string => list.map(({ guard }) => `(${guard})`).join(' || ') || 'false';
    return [
      ...all,
      { guard: `!(${some(all)})`, deeds: [] },
      ...(idle.length > 0 ? [{ guard: some(idle), deeds: [] }] : []),
    ];
  };

  const known = (modes.environment ?? []).flatMap((one) => one.rules);
  const calm = script.places.flatMap((place, index) => (place.prompt ? [`p != ${index}`] : [])).join(' && ') || 'true';
  for (const rule of modes.rules) {
    if (rule.who === 'crew' || known.includes(rule.id)) continue;
    for (const { guard, deeds } of outcomesOfRule(rule)) add([calm, guard], deeds);
  }
  const surprises = (modes.environment ?? []).filter((one) => setting.environment.includes(one.name));
  for (const [s, one] of surprises.entries()) {
    const unused = `(su & ${1 << s}) == 0`;
    const used = `su = su | ${1 << s}`;
    if (one.rules.length === 0) add([calm, unused], [used]);
    for (const rule of modes.rules.filter(({ id }) => one.rules.includes(id))) {
      for (const { guard, deeds } of outcomesOfRule(rule)) add([calm, unused, guard], [...deeds, used]);
    }
  }
  const main = `p <= ${script.main.end}`;
  for (const leave of script.leaves) add([calm, main, notFalse(leave.branch.when)], [`p = ${leave.to}`]);
  for (const one of script.standing) {
    const place = script.places[one.place]!;
    const here = [calm, main, `p >= ${one.from}`, `p != ${one.place}`, notFalse(place.step!.cue)];
    for (const { guard, deeds } of handOptions(place)) add([...here, guard], deeds);
  }

  const hands = script.places.flatMap((place, index) => (place.rules === null ? [] : [index]));
  const slips = slipsOf(script, setting);
  const room = `sl < ${setting.atOnce}`;
  for (const [index, place] of script.places.entries()) {
    const here = `p == ${index}`;
    const owed = hands.indexOf(index) + 1;
    const never = place.only === null ? 'false' : `!(${notFalse(place.step!.only)})`;
    const cue = place.step === null ? 'true' : notFalse(place.step.cue);
    const waits = place.cue === null ? 'false' : `!(${cue})`;
    const left = place.free ? 'true' : never;
    for (const next of place.left) add([here, left], [`p = ${next}`]);
    for (const next of place.waited) add([here, `!(${left})`, waits], [`p = ${next}`]);
    if (place.step === null) continue;
    const can = [here, `!(${never})`, cue];
    assert(place.ways.length === 0 || place.rules === null, 'a hand that also decides is not written');
    for (const { guard, deeds } of handOptions(place)) {
      for (const [next, when] of nexts(place, certain, notFalse)) {
        add([...can, guard, when], [...deeds, `p = ${next}`]);
        if (slips[index]!.twice) {
          add([...can, guard, when, room, 'ow == 0'], [...deeds, `p = ${next}`, 'sl = sl + 1', `ow = ${owed}`]);
        }
      }
    }
    for (const next of place.next) {
      if (slips[index]!.forgotten) add([...can, room], [`p = ${next}`, 'sl = sl + 1']);
      if (slips[index]!.late) add([...can, room, 'ow == 0'], [`p = ${next}`, 'sl = sl + 1', `ow = ${owed}`]);
    }
    if (owed > 0 && setting.atOnce > 0) {
      for (const { guard, deeds } of handOptions(place)) add([`ow == ${owed}`, guard], [...deeds, 'ow = 0']);
    }
  }

  const starts = system.initial.map((state) => `  :: atomic { ${startText(modes, graph.lines[state]!)} }`);
  const body = options.map(({ guard, deeds }) => `  :: d_step { ${guard} -> ${[...deeds, 'skip'].join('; ')} }`);
  return `${variablesText(modes)}
byte p; byte ow; byte sl; byte su;
active proctype flight() {
  if
${starts.join('\n')}
  fi;
end: do
${body.join('\n')}
  od
}
`;
}

/** Where a place leads, with the condition of each way: a certain one goes before all others. */
function nexts(
  place: Place,
  certain: (text: string) => string,
  notFalse: (text: string) => string,
): readonly (readonly [next: number, when: string])[] {
  if (place.ways.length === 0) return place.next.map((next) => [next, 'true']);
  const sent = place.step!.branch;
  const noneCertain = sent.map((way) => `!(${certain(way.when)})`).join(' && ');
  const conditions = new Map<number, string[]>();
  const when = (next: number, condition: string): void =>
    void conditions.set(next, [...(conditions.get(next) ?? []), condition]);
  for (const [w, way] of place.ways.entries()) {
    if (way.to === null) continue;
    when(way.to, certain(sent[w]!.when));
    when(way.to, `(${noneCertain} && ${notFalse(sent[w]!.when)})`);
  }
  for (const next of place.next) when(next, `(${noneCertain})`);
  return [...conditions].map(([next, list]) => [next, list.join(' || ')]);
}

function startText(modes: ModeSet, line: Line): string {
  const bits = (words: readonly string[]): number =>
    words.reduce((sum, word, index) => sum | (line.armed.includes(word) ? 1 << index : 0), 0);
  const axes = (['thrust', 'lateral', 'vertical', 'rel', 'phase'] as const).map((axis) =>
    modes[axis].indexOf(line[axis]),
  );
  const [th, la, ve, rel, ph] = axes;
  return `th = ${th}; la = ${la}; ve = ${ve}; rel = ${rel}; ph = ${ph}; av = ${bits(modes.armedVertical)}; al = ${bits(modes.armedLateral)}; p = 0`;
}
