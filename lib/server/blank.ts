import type { Procedure, ProcedureId, StateLine } from '../procedure/procedure.ts';

const UNSTATED: StateLine = {
  flaps: [],
  gear: '',
  speed: '',
  autopilot: '',
  thrust: [],
  lateral: [],
  vertical: [],
  armed: null,
  selectedAltitude: '',
  also: '',
};

/** A procedure that states its title and nothing else. */
export function blankProcedure(id: string, title: string, type: string): Procedure {
  return {
    id: id as ProcedureId,
    title,
    class: '',
    phases: [],
    effectivity: { type, standards: [], note: '' },
    owner: '',
    envelope: { weight: null, elevation: null, temperature: null, wind: null, level: null, detents: [] },
    weightLimit: '',
    entry: UNSTATED,
    exit: UNSTATED,
    leavesTo: [],
    steps: [],
    branches: [],
    rationale: '',
  };
}
