// The approach of the studies as a procedure: five steps, each with its height and its limit, in one of two orders.
import { readProcedureFile } from '../../lib/file/procedure-file.ts';
import type { Procedure } from '../../lib/procedure/procedure.ts';

type Trigger = readonly [height: string, detent: string];
const BASE: readonly Trigger[] = [
  ['2 700', 'F12'],
  ['2 300', 'F18'],
  ['2 000', 'gear'],
  ['1 700', 'F26'],
  ['1 400', 'F35'],
];
const GEAR_FIRST: readonly Trigger[] = [
  ['2 900', 'gear'],
  ['2 700', 'F12'],
  ['2 500', 'F18'],
  ['2 200', 'F26'],
  ['1 900', 'F35'],
];

export function triggerApproach(order: 'base' | 'gear first', speed = 200): Procedure {
  const steps = (order === 'base' ? BASE : GEAR_FIRST).map(([height, what], index) => {
    const limit = what === 'gear' ? 'VLO-extend' : `VFE ${what} - 5 kt`;
    const hand =
      what === 'gear'
        ? '{ verb: move, object: gear lever, value: DOWN }'
        : `{ verb: select, object: flap lever, value: ${what} }`;
    return `  - id: st_aaaaa${index}
    label: TA-0${index + 1}
    cue: height <= ${height} ft AAL and speed <= ${limit}
    who: PM
    do: ${hand}
    expect: same
`;
  });
  const text = `format: cuewright-procedure/1
id: pr_aaaaaa
title: Approach by triggers, ${order}
class: normal
phases: [approach, landing]
effectivity: { type: TN-182, standards: [A, B] }
owner: Oona Reth
envelope: { weight: 46 t to 66.8 t, detents: [F35] }
entry: { flaps: [F6], gear: up, speed: ${speed} kt, thrust: [GOVERN], lateral: [COURSE], vertical: [GLIDE], armed: [] }
exit: { flaps: [F35], gear: down }
steps:
${steps.join('')}...
`;
  const read = readProcedureFile(text, 'trigger approach');
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}
