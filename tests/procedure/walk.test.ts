import { describe, expect, it } from 'vitest';
import { type ProcedureParts, procedureWith, type StepParts } from '../../lib/procedure/build.ts';
import { type StepState, walk } from '../../lib/procedure/walk.ts';
import { tn182 } from '../kit/world.ts';

const walked = (parts: ProcedureParts): readonly StepState[] => walk(procedureWith(parts), tn182);
const select = (detent: string, cue: string, more: StepParts = {}): StepParts => ({
  cue,
  who: 'PM',
  verb: 'select',
  object: 'flap lever',
  value: detent,
  ...more,
});
const goAround: StepParts = { cue: 'heard "go around"', who: 'PF', verb: 'press', object: 'GO-AROUND switch' };

describe('flaps along a procedure', () => {
  const takeOff = {
    phases: ['take-off' as const],
    entry: { flaps: ['F6', 'F12', 'F18'] },
    steps: [
      select('F12', 'speed >= VMM F12 and flaps F18 indicated', { only: 'take-off detent F18' }),
      select('F6', 'speed >= VMM F6 and flaps F12 indicated', { only: 'take-off detent F12 or F18' }),
      select('F0', 'speed >= VMM F0 and flaps F6 indicated'),
    ],
  };

  it('keeps the take-off detents apart: one text, three beginnings', () => {
    const [first, second, third] = walked(takeOff);
    expect(first!.before.selected).toEqual(['F18']);
    expect([...first!.after.selected].sort()).toEqual(['F12', 'F6']);
    expect(second!.before.indicated).toEqual(['F12']);
    expect(third!.before.selected).toEqual(['F6']);
    expect(third!.after.selected).toEqual(['F0']);
  });

  it('knows each movement of the lever', () => {
    const moves = walked(takeOff).map((at) => at.moves.map((move) => `${move.way} ${move.through.join('-')}`));
    expect(moves).toEqual([['retract F18-F12'], ['retract F12-F6'], ['retract F6-F0']]);
  });

  it('takes every detent on the way as possible until one is seen', () => {
    const [moving, seen] = walked({
      entry: { flaps: ['F35'] },
      steps: [select('F18', 'then'), { cue: 'flaps F18 indicated', who: 'PF', verb: 'check', object: 'flaps' }],
    });
    expect(moving!.after.indicated).toEqual(['F35', 'F26', 'F18']);
    expect(seen!.before.indicated).toEqual(['F18']);
  });

  it('believes the check that sees the flap arrive', () => {
    const [at] = walked({
      entry: { flaps: ['F6'] },
      steps: [select('F12', 'then', { checkSees: 'flaps F12 indicated' })],
    });
    expect(at!.after.indicated).toEqual(['F12']);
  });

  it('says that a cue waits for a flap that nothing selected', () => {
    const [at] = walked({ entry: { flaps: ['F6'] }, steps: [select('F0', 'flaps F18 indicated')] });
    expect(at!.neverThere).toBe('F18');
  });

  it('says that nothing is known where nothing is stated', () => {
    const [at] = walked({ entry: { flaps: [] }, steps: [select('F12', 'then')] });
    expect(at!.before.flapsKnown).toBe(false);
    expect(at!.after).toMatchObject({ flapsKnown: true, selected: ['F12'] });
  });
});

describe('the lowest speed that holds', () => {
  const floors = (parts: ProcedureParts): readonly string[] => walked(parts).map((at) => at.before.floor);

  it('is that of the take-off up to the acceleration altitude', () => {
    const steps = [{ cue: 'height >= 400 ft AAL' }, { cue: 'height >= acceleration altitude' }, { cue: 'then' }];
    expect(floors({ phases: ['take-off'], entry: { flaps: ['F12'] }, steps })).toEqual([
      'takeOff',
      'elsewhere',
      'elsewhere',
    ]);
  });

  it('is that of one engine in an engine-out take-off', () => {
    const steps = [{ cue: 'height >= 400 ft AAL' }];
    expect(floors({ class: 'engine-out', phases: ['take-off'], entry: { flaps: ['F12'] }, steps })).toEqual([
      'engineOut',
    ]);
  });

  it('goes in a go-around from VREF over the detent left to VMM', () => {
    const steps = [goAround, select('F18', 'then'), select('F12', 'speed >= VMM F12')];
    expect(floors({ phases: ['go-around'], entry: { flaps: ['F26', 'F35'] }, steps })).toEqual([
      'finalApproach',
      'goAroundFirstRetraction',
      'elsewhere',
    ]);
  });

  it('stays that of the go-around where the press itself has a condition', () => {
    const steps = [{ ...goAround, only: 'the switch alive' }, select('F18', 'then')];
    const states = walked({ phases: ['go-around'], entry: { flaps: ['F35'] }, steps });
    expect(states[1]!.before).toMatchObject({ floor: 'goAroundFirstRetraction', goingAround: true });
  });

  it('is VREF once the landing flap is selected on an approach', () => {
    const steps = [select('F26', 'then'), { cue: 'then' }];
    expect(floors({ phases: ['approach'], entry: { flaps: ['F18'] }, steps })).toEqual(['elsewhere', 'finalApproach']);
  });
});

describe('the rest of the state', () => {
  it('follows autopilot, gear, speed target and selected altitude', () => {
    const states = walked({
      entry: { autopilot: 'off', gear: 'down', speed: '' },
      steps: [
        { cue: 'then', who: 'PM', verb: 'move', object: 'gear lever', value: 'UP' },
        { cue: 'then', who: 'PM', verb: 'engage', object: 'autopilot switch', value: 'on' },
        { cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value: '250 kt or as cleared' },
        { cue: 'then', who: 'PF', verb: 'set', object: 'altitude selector', value: 'cleared level' },
      ],
    });
    expect(states.map((at) => at.after.autopilot)).toEqual(['off', 'on', 'on', 'on']);
    expect(states[0]!.after.gear).toEqual(['up']);
    expect(states[2]!.after.target).toMatchObject({ kind: 'expression', text: '250 kt', setBy: 's3' });
    expect(states[3]!.after.selectedAltitude).toBe('cleared level');
  });

  it('keeps words for a target that has no figure', () => {
    const [at] = walked({
      steps: [{ cue: 'then', who: 'PF', verb: 'set', object: 'speed selector', value: 'as the other pilot likes' }],
    });
    expect(at!.after.target.kind).toBe('words');
  });

  it('resolves same, lists, additions and removals of the mode line', () => {
    const [first, second] = walked({
      entry: { thrust: ['CLIMB'], lateral: ['HEADING'], vertical: ['ASCENT'], armed: ['ALT', 'ROUTE'] },
      steps: [
        {
          cue: 'then',
          expect: { thrust: 'same', lateral: 'ROUTE', vertical: ['ASCENT', 'LEVEL'], armed: { drop: ['ROUTE'] } },
        },
        { cue: 'vertical = LEVEL', expect: { armed: { add: ['COURSE'] } } },
      ],
    });
    expect(first!.after.modes).toEqual({
      thrust: ['CLIMB'],
      lateral: ['ROUTE'],
      vertical: ['ASCENT', 'LEVEL'],
      armed: ['ALT'],
    });
    expect(second!.before.modes.vertical).toEqual(['LEVEL']);
    expect(second!.after.modes.armed).toEqual(['ALT', 'COURSE']);
  });

  it('does not know afterwards what a conditional step may have left out', () => {
    const [at] = walked({
      entry: { autopilot: 'off' },
      steps: [{ cue: 'then', only: 'autopilot wanted', who: 'PM', verb: 'engage', object: 'autopilot switch' }],
    });
    expect(at!.after.autopilot).toBe('either');
  });
});

describe('branches', () => {
  const branched = (when: string, joins = '', way: StepParts['branch'] = []): readonly StepState[] =>
    walked({
      entry: { flaps: ['F6'] },
      steps: [
        { label: 'XX-01', cue: 'event "one"', branch: way },
        select('F12', 'then', { label: 'XX-02' }),
        { label: 'XX-03', cue: 'then' },
      ],
      branches: [{ label: 'XX-LOW', when, joins, steps: [select('F0', 'then', { label: 'XX-L1' })] }],
    });
  const at = (states: readonly StepState[], label: string): StepState =>
    states.find((each) => each.step.label === label)!;

  it('begin at the step that their condition names', () => {
    expect(at(branched('vertical = CAPTURE at XX-01'), 'XX-L1').before.selected).toEqual(['F6']);
  });

  it('begin at the step that sends the reader there', () => {
    expect(at(branched('judged "low"', '', [{ when: 'low', to: 'XX-LOW' }]), 'XX-L1').before.selected).toEqual(['F6']);
  });

  it('may begin anywhere when nothing says where', () => {
    expect([...at(branched('vertical = CAPTURE'), 'XX-L1').before.selected].sort()).toEqual(['F12', 'F6']);
  });

  it('bring their state back to the step where they join', () => {
    const states = branched('judged "low"', 'XX-03', [{ when: 'low', to: 'XX-LOW' }]);
    expect([...at(states, 'XX-03').before.selected].sort()).toEqual(['F0', 'F12']);
  });
});
