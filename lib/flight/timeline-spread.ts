/**
 * Nobody takes the same time twice: each duration lies between `least` and `most` times what the policy says. Later is
 * not always worse (who is sooner done may be given something longer before what matters), so ends and corners are
 * searched and the search is told: it is no proof over all combinations.
 */
import { type Duty, type Stretch, type Timeline, timeline } from './timeline.ts';

export type Spread = { readonly least: number; readonly most: number };
/** `under`: which durations were stretched, in words. */
export type Run = { readonly under: string; readonly timeline: Timeline };
export type Varied = {
  readonly nominal: Timeline;
  readonly runs: readonly Run[];
  /** What was searched, in words. */
  readonly searched: string;
};
export type Worst = Run & { readonly value: number };

/** Beyond this many duties each alone is left out, and `searched` says so. */
const MOST_ALONE = 80;

/** The timeline as it stands and with durations stretched. Voices of nobody in the crew keep their time. */
export function varied(duties: readonly Duty[], { least, most }: Spread): Varied {
  const nominal = timeline(duties);
  const mine = duties.filter((duty) => duty.who !== null && duty.takes > 0);
  const crew =
    (stretch: Stretch): Stretch =>
    (duty) =>
      duty.who === null ? 1 : stretch(duty);
  const run = (under: string, stretch: Stretch): Run => ({ under, timeline: timeline(duties, crew(stretch)) });
  const corners = [
    run('every duration at its least', () => least),
    run('every duration at its most', () => most),
    run('PF slow, PM quick', ({ who }) => (who === 'PF' ? most : least)),
    run('PM slow, PF quick', ({ who }) => (who === 'PM' ? most : least)),
    run('speech slow, hands quick', ({ speaks }) => (speaks === null ? least : most)),
    run('hands slow, speech quick', ({ speaks }) => (speaks === null ? most : least)),
  ];
  const one =
    (alone: Duty, own: number, rest: number): Stretch =>
    (duty) =>
      duty === alone ? own : rest;
  const alone =
    mine.length > MOST_ALONE
      ? []
      : mine.flatMap((duty) => [
          run(`"${duty.does}" alone at its most`, one(duty, most, 1)),
          run(`"${duty.does}" alone at its least`, one(duty, least, 1)),
          run(`"${duty.does}" at its most, all else at its least`, one(duty, most, least)),
          run(`"${duty.does}" at its least, all else at its most`, one(duty, least, most)),
        ]);
  const runs = [{ under: 'the durations as they stand', timeline: nominal }, ...corners, ...alone];
  const each = alone.length > 0 ? ', each one alone at both ends against three grounds' : '';
  const searched = `×${least} to ×${most} searched in ${runs.length} runs: all as they stand, all least, all most, pilot against pilot, speech against hands${each}; not every combination`;
  return { nominal, runs, searched };
}

/** The run in which a measure is largest; the first of equals. Null where no run has it. */
export function worstOf({ runs }: Varied, measure: (timeline: Timeline) => number | null): Worst | null {
  let worst: Worst | null = null;
  for (const run of runs) {
    const value = measure(run.timeline);
    if (value !== null && (worst === null || value > worst.value + 1e-9)) worst = { ...run, value };
  }
  return worst;
}
