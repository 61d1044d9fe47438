// Every mode line that the demo procedures expect can come about, on both standards, when the steps are done in order.
import { expect, test } from 'vitest';
import { parseGate } from '../../lib/gate/parse.ts';
import { conjuncts } from '../../lib/procedure/cue.ts';
import type { Expect, ExpectedMode, Procedure, Step } from '../../lib/procedure/procedure.ts';
import { altArmed, byItself, distinct, type Line, successors } from '../kit/mode-line.ts';
import { procedureNames, seedProcedure, seedSheet } from '../kit/seed.ts';

const { modes } = seedSheet();

/** Lines in which the procedure may begin: every word of its entry, the selected altitude on any side. */
function entryLines(procedure: Procedure): readonly Line[] {
  const { thrust, lateral, vertical, armed } = procedure.entry;
  const armedVertical = (armed ?? []).filter((word) => modes.armedVertical.includes(word) && word !== 'ALT');
  const armedLateral = (armed ?? []).filter((word) => modes.armedLateral.includes(word));
  return thrust.flatMap((t) =>
    lateral.flatMap((l) =>
      vertical.flatMap((v) =>
        (v === 'CAPTURE' ? ['near'] : modes.rel).map((rel) => ({
          thrust: t,
          lateral: l,
          vertical: v,
          armedVertical: [...armedVertical, ...(rel !== 'near' && altArmed(modes, v, rel) ? ['ALT'] : [])].sort(),
          armedLateral,
          rel,
          phase: v === 'PITCH' && t === 'MANUAL' && procedure.phases[0] === 'take-off' ? 'ground' : 'air',
        })),
      ),
    ),
  );
}

/** The rules that a hand of this step sets off; null where it touches nothing of the guidance. */
function touched(step: Step): ((event: string) => boolean) | null {
  if (step.verb === 'press') {
    const buttons = step.object.match(/\b[A-Z]{2,}(-[A-Z]+)?\b/g) ?? [];
    return (event) => buttons.some((button) => event.startsWith(`press ${button}`) && !/again|dead/.test(event));
  }
  if (step.verb === 'set' && step.object === 'altitude selector') return (e) => e.startsWith('turn selected altitude');
  if (step.verb === 'disengage' && /autothrust/.test(step.object)) return (e) => e === 'autothrust off';
  if (step.object === 'thrust levers' && step.value === 'take-off') return (e) => e === 'levers to take-off';
  if (/^fully forward by hand/.test(step.value)) return (e) => e.startsWith('levers forward by hand');
  return null;
}

const wordFits = (asked: ExpectedMode, before: string, now: string): boolean =>
  asked === '' || asked === now || (asked === 'same' ? before === now : Array.isArray(asked) && asked.includes(now));

function fits(asked: Expect, before: Line, now: Line): boolean {
  const was = [...before.armedVertical, ...before.armedLateral];
  const is = [...now.armedVertical, ...now.armedLateral];
  const { armed } = asked;
  const wanted =
    armed === null
      ? is
      : armed === 'same'
        ? was
        : 'length' in armed
          ? armed
          : [...was.filter((word) => !armed.drop?.includes(word)), ...(armed.add ?? [])];
  return (
    wordFits(asked.thrust, before.thrust, now.thrust) &&
    wordFits(asked.lateral, before.lateral, now.lateral) &&
    wordFits(asked.vertical, before.vertical, now.vertical) &&
    [...new Set(wanted)].sort().join() === [...is].sort().join()
  );
}

function cueFits(text: string, line: Line): boolean {
  return conjuncts(parseGate(text).gate).every((part) => {
    if (part.kind === 'mode') return part.words.includes(line[part.axis]);
    if (part.kind === 'armed') return [...line.armedVertical, ...line.armedLateral].includes(part.word);
    if (part.kind === 'not' && part.of.kind === 'mode') return !part.of.words.includes(line[part.of.axis]);
    if (part.kind === 'not' && part.of.kind === 'armed') return !line.armedVertical.includes(part.of.word);
    return true;
  });
}

function follow(
  steps: readonly Step[],
  start: readonly Line[],
  standard: string,
): { missing: string[]; seen: readonly Line[] } {
  const missing: string[] = [];
  let lines = start;
  let seen = start;
  const turned = (from: readonly Line[]) =>
    from.flatMap((line) => successors(modes, line, standard, (r) => r.event.startsWith('turn selected altitude')));
  for (const step of steps) {
    // What may be needed at any time repairs what somebody did beside the text: a selected altitude turned the wrong way.
    const anyTime = step.cue.includes('not armed ALT');
    const from = anyTime ? distinct([...seen, ...turned(seen)]) : lines;
    const came = byItself(modes, from, standard).filter((line) => cueFits(step.cue, line));
    const ready = anyTime ? distinct([...came, ...turned(came)]) : came;
    const hand = touched(step);
    const after = ready.flatMap((before) => {
      const moved =
        hand === null ? [before] : successors(modes, before, standard, (r) => r.who === 'crew' && hand(r.event));
      // A selector or button that is right already changes nothing.
      return [...moved, before]
        .flatMap((now) => byItself(modes, [now], standard))
        .filter((now) => fits(step.expect, before, now));
    });
    if (after.length === 0) missing.push(step.label);
    // A step that waits for a mode may still be waiting when the one written below it comes.
    else
      lines = distinct(
        step.only === '' && !/(thrust|vertical|lateral) = [A-Z]/.test(step.cue) ? after : [...after, ...lines],
      );
    seen = distinct([...seen, ...lines]);
  }
  return { missing, seen };
}

test.each(['A', 'B'].flatMap((standard) => procedureNames().map((name) => [name, standard] as const)))(
  '%s, standard %s',
  (name, standard) => {
    const procedure = seedProcedure(name);
    const main = follow(procedure.steps, entryLines(procedure), standard);
    expect(main.missing).toEqual([]);
    const all = byItself(modes, main.seen, standard);
    for (const branch of procedure.branches) {
      const start = all.filter((line) => cueFits(branch.when, line));
      expect(follow(branch.steps, start, standard).missing, branch.label).toEqual([]);
    }
  },
);

test('a line that cannot come about is seen', () => {
  const procedure = seedProcedure('climb-altitude-change');
  const steps = procedure.steps.map((step) =>
    step.label === 'CL-15' ? { ...step, expect: { ...step.expect, armed: ['ALT'] } } : step,
  );
  expect(follow(steps, entryLines(procedure), 'B').missing).toContain('CL-15');
});
