// A procedure printed as Markdown, as a person would write it down: the text that a general linter is given to read.
import type { Procedure, StateLine, Step } from '../../lib/procedure/procedure.ts';

const stateText = (state: StateLine): string =>
  [state.flaps.join(' or '), state.gear, state.speed, state.autopilot, state.thrust, state.lateral, state.vertical]
    .flat()
    .filter(Boolean)
    .join(', ');

function stepText(step: Step, place: number): string {
  const lines = [
    `### ${place}. ${step.label || 'Step'}`,
    '',
    `When ${step.cue || 'then'}: **${step.who}** ${step.verb} ${step.object} ${step.value}`,
  ];
  if (step.orderBy) lines.push(`- ${step.orderBy} orders "${step.orderWords}"`);
  if (step.say) lines.push(`- ${step.sayBy || step.who} says "${step.say}"`);
  if (step.reply) lines.push(`- ${step.replyBy} replies "${step.reply}"`);
  for (const axis of ['thrust', 'lateral', 'vertical'] as const)
    if (step.expect[axis]) lines.push(`- expect ${axis} ${step.expect[axis]}`);
  if (step.checkSees)
    lines.push(`- ${step.checkBy} sees ${step.checkSees} ${step.checkWithin}; if not ${step.checkIfNot}`);
  for (const notice of step.before) lines.push('', `> ${notice.kind}: ${notice.text}`);
  for (const words of [step.note, step.why, step.source]) if (words) lines.push('', words);
  return lines.join('\n');
}

/** Main line and branches, one heading a step. */
export function markdownOf(procedure: Procedure): string {
  const parts = [
    `# ${procedure.title}`,
    `Phases: ${procedure.phases.join(', ')}. Owner: ${procedure.owner}.`,
    `Entry: ${stateText(procedure.entry)}`,
    '## Steps',
    ...procedure.steps.map((step, index) => stepText(step, index + 1)),
    ...procedure.branches.flatMap((branch) => [
      `## ${branch.title || branch.label}`,
      ...branch.steps.map((step, index) => stepText(step, index + 1)),
    ]),
    '## Exit',
    stateText(procedure.exit),
  ];
  return `${parts.join('\n\n')}\n`;
}
