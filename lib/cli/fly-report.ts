// What `fly --format json` prints, and what the text is made from. format.md documents it: fields may be added to it, none is
// taken away or changes its meaning while the form is called cuewright-fly/1.
import type { NotChecked, Severity, Witness } from '../check/finding.ts';
import type { FlownOne } from '../check/flown.ts';
import { type Figure, figuresOf } from '../flight/figures.ts';
import type { Timeline } from '../flight/timeline.ts';
import { type Worst, worstOf } from '../flight/timeline-spread.ts';
import type { Conditions, EndReason, FlightEvent, FlightProblem } from '../flight/trace.ts';
import { positionWords } from '../procedure/locate.ts';
import type { Procedure } from '../procedure/procedure.ts';
import type { Exit } from './exit.ts';
import type { Unreadable } from './input.ts';

export type FlyReport = {
  readonly form: 'cuewright-fly/1';
  readonly exit: Exit;
  readonly against: {
    readonly sheet: { readonly file: string; readonly type: string; readonly revision: string };
    readonly policy: { readonly file: string; readonly operator: string; readonly version: string };
    readonly library: { readonly folder: string } | null;
  } | null;
  readonly flight: ReportedFlight | null;
  readonly unreadable: readonly Unreadable[];
};

export type ReportedFlight = {
  readonly file: string;
  readonly id: string;
  readonly title: string;
  readonly engine: string;
  readonly settings: string;
  readonly conditions: Conditions;
  readonly assumptions: readonly string[];
  readonly cannot: readonly string[];
  /** Of all weights under the same wind and temperature. */
  readonly worst: string;
  readonly figures: readonly Figure[];
  readonly events: readonly (Omit<FlightEvent, 'line'> & { readonly called: string })[];
  readonly crew: ReportedCrew;
  readonly problems: readonly (FlightProblem & { readonly called: string })[];
  readonly end: { readonly time: number; readonly reason: EndReason; readonly says: string };
  readonly findings: readonly ReportedFlightFinding[];
  readonly notChecked: readonly Omit<NotChecked, 'at'>[];
};
export type ReportedFlightFinding = {
  readonly check: string;
  readonly number: number;
  readonly severity: Severity;
  readonly line: number;
  readonly column: number;
  readonly step: string;
  readonly called: string;
  readonly message: string;
  readonly witness: Witness;
};
export type ReportedCrew = {
  readonly spans: readonly {
    readonly who: string;
    readonly does: string;
    readonly start: number;
    readonly end: number;
    readonly late: number;
    readonly slack: number | null;
  }[];
  /** Shares of 10 s and 30 s, 0 to 1, the busiest of each; and the most with durations stretched. */
  readonly busy: readonly {
    readonly who: string;
    readonly ten: number;
    readonly thirty: number;
    readonly tenMost: number;
  }[];
  readonly collisions: readonly { readonly first: string; readonly second: string; readonly seconds: number }[];
  readonly searched: string;
};

export const calledBy = (procedure: Procedure, step: string | null): string =>
  step === null ? '' : positionWords(procedure, step);

/** One flight and its crew, rounded nowhere. */
export function flownReport(procedure: Procedure, one: FlownOne) {
  const { trace } = one;
  return {
    engine: trace.version,
    conditions: trace.conditions,
    assumptions: trace.assumptions,
    cannot: trace.cannot,
    figures: figuresOf(procedure, trace),
    events: trace.events.map(({ line: _, ...event }) => ({ ...event, called: calledBy(procedure, event.step) })),
    crew: crewReport(one),
    problems: trace.problems.map((problem) => ({ ...problem, called: calledBy(procedure, problem.step) })),
    end: trace.end,
  };
}

function crewReport({ crew, varied }: FlownOne): ReportedCrew {
  const { spans, busy, collisions } = crew();
  const most = (pilot: 'PF' | 'PM'): Worst | null => worstOf(varied(), (run: Timeline) => run.busy[pilot].ten.share);
  return {
    spans: spans.map(({ duty, start, end, late, slack }) => ({
      ...{ who: duty.who ?? 'voice', does: duty.does, start, end, late, slack },
    })),
    busy: (['PF', 'PM'] as const).map((who) => ({
      ...{ who, ten: busy[who].ten.share, thirty: busy[who].thirty.share, tenMost: most(who)?.value ?? 0 },
    })),
    collisions: collisions.map(({ first, second, seconds }) => ({
      ...{ first: first.duty.does, second: second.duty.does, seconds },
    })),
    searched: varied().searched,
  };
}
