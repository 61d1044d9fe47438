import { type Call, callsOf } from '../calls.ts';
import { type Heard, headOf } from '../corpus.ts';
import { plain } from '../names.ts';
import { defineRule } from '../rule.ts';
import { soundAlike } from '../sound.ts';
import { inOrder } from '../witness.ts';

const unique = new WeakMap<readonly Heard<'call'>[], readonly Heard<'call'>[]>();
/** Each words with each act once: a fleet says "flap six" in many texts. */
function oneOfEach(all: readonly Heard<'call'>[]): readonly Heard<'call'>[] {
  const before = unique.get(all);
  if (before !== undefined) return before;
  const made = [...new Map(all.map((each) => [`${each.tells.words}|${each.tells.does}`, each])).values()];
  unique.set(all, made);
  return made;
}

export const soundAlikeCalls = defineRule({
  id: 'sound-alike-calls',
  number: 30,
  severity: 'ADVICE',
  kind: 'T',
  stage: 'submission',
  phases: 'all',
  title: 'Calls that sound alike',
  says: 'No two calls of one phase sound alike and ask for different acts, and no call is a phrase of the controller, an alert or an automatic callout. Members of a family that differ in a clear word pass ("flap six", "flap twelve"); "six" and "twenty-six" do not.',
  why: 'A flap was retracted in place of the gear after the call of a positive climb.',
  source: { text: 'ATSB AO-2018-034 and reports of mis-selected levers', seen: true },
  needs: ['sheet', 'policy', 'others'],
  reads: ['cue', 'orderWords', 'verb', 'object', 'value'],
  messages: {
    alike: '"{words}" sounds like "{other}" ({where}), and they ask for different things: {does}; {otherDoes}.',
    reserved: '"{words}" is also {whose}: whoever hears it may do the other thing.',
  },
  examples: {
    bad: '[{cue: then, orderBy: PF, orderWords: flap six, who: PM, verb: select, object: flap lever, value: F6}, {cue: then, orderBy: PF, orderWords: flap twenty-six, who: PM, verb: select, object: flap lever, value: F26}]',
    good: '[{cue: then, orderBy: PF, orderWords: flap six, who: PM, verb: select, object: flap lever, value: F6}, {cue: then, orderBy: PF, orderWords: flap two-six, who: PM, verb: select, object: flap lever, value: F26}]',
  },
  run({ procedure, steps, sheet, policy, others }, report) {
    const mine = callsOf(steps);
    const reserved = new Map([
      ...policy.words.reserved.map((words) => [plain(words), 'a phrase of the controller'] as const),
      ...sheet.callouts.map(({ words }) => [plain(words), 'an automatic callout'] as const),
      ...sheet.alerts.filter(({ words }) => words !== '').map(({ words }) => [plain(words), 'an alert'] as const),
    ]);
    const heard = procedure.phases.flatMap((phase) => oneOfEach(others.read('call', phase)));
    const said = new Set<string>();
    const look = (call: Call, other: Call, of: string | null): void => {
      if (call.does === other.does || !soundAlike(call.words, other.words)) return;
      const pair = [call.words, other.words].sort().join('|');
      if (said.has(pair)) return;
      said.add(pair);
      const where = of === null ? 'here' : headOf(others, of).title;
      const data = { words: call.words, other: other.words, where, does: call.does, otherDoes: other.does };
      const witness = inOrder(call.words, other.words, `"${call.words}" and "${other.words}"`);
      const cause = `sound-alike-calls ${pair}`;
      report({ at: { step: call.step, field: 'orderWords' }, message: 'alike', data, witness, cause, read: [pair] });
    };
    for (const [index, call] of mine.entries()) {
      const whose = reserved.get(call.words);
      if (whose !== undefined) {
        const witness = inOrder(call.words, whose, `"${call.words}" is ${whose}`);
        const at = { step: call.step, field: 'orderWords' };
        report({ at, message: 'reserved', data: { words: call.words, whose }, witness, read: [whose] });
      }
      for (const other of mine.slice(index + 1)) look(call, other, null);
      for (const { of, tells } of heard) if (of !== procedure.id) look(call, tells, of);
    }
  },
});
