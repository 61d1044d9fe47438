// Which hand belongs on the guidance panel, by the operator's panel rule and the state at a step.
import type { Policy } from '../policy/policy.ts';
import type { Role, Step } from '../procedure/procedure.ts';
import type { AircraftState } from '../procedure/state.ts';
import type { StepState } from '../procedure/walk.ts';

const HANDS = new Set(['set', 'select', 'press', 'move', 'arm']);
const SELECTOR = /\b(altitude|speed|heading|vertical speed|rate)\s+(selector|knob|window|target)\b/i;
const GO_AROUND = /\bgo-around\b/i;

const pressesGoAround = (step: Step): boolean => step.verb === 'press' && GO_AROUND.test(step.object);

/** A step that presses or turns something of the guidance panel. `buttons`: mode words that stand on a button. */
export function touchesPanel(step: Step, buttons: readonly string[]): boolean {
  if (!HANDS.has(step.verb)) return false;
  if (SELECTOR.test(step.object) || pressesGoAround(step)) return true;
  const words = step.object.split(/[^\w-]+/);
  return (step.verb === 'press' || step.verb === 'arm') && words.some((word) => buttons.includes(word));
}

/** Who presses and turns here; null where the state leaves it open. */
export function panelHand(at: StepState, policy: Policy): Role | null {
  const { panel } = policy;
  if (pressesGoAround(at.step)) return panel.goAroundSwitch;
  const { autopilot, goingAround } = at.before;
  if (goingAround) return panel.goAround;
  if (autopilot === 'either') return panel.handFlown === panel.autopilot ? panel.handFlown : null;
  return autopilot === 'on' ? panel.autopilot : panel.handFlown;
}

/** The state in the words of a finding. */
export function flownWords(state: AircraftState): string {
  if (state.goingAround) return 'going around';
  return state.autopilot === 'on' ? 'autopilot on' : 'hand-flown';
}
