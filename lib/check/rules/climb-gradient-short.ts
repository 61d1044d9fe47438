import { formatNumber } from '../../units/format.ts';
import { type Asked, askedClimbs } from '../climb-asked.ts';
import { climbDomain, gradientOver } from '../climb-question.ts';
import { unmarkedGradients } from '../gradient-text.ts';
import { defineRule } from '../rule.ts';
import { wordsOf } from '../witness.ts';

export const climbGradientShort = defineRule({
  id: 'climb-gradient-short',
  number: 55,
  severity: 'STOP',
  kind: 'N',
  stage: 'writing',
  phases: ['take-off', 'initial climb', 'approach', 'landing', 'go-around'],
  title: 'Climb gradient too small',
  says: 'With each detent the gradients of the climb segments, of the charted missed approach and over the obstacle of the card are there at every weight, elevation and temperature of the envelope, unless the procedure limits the weight for them. Every gradient in a text says gross or net.',
  why: 'A weight that the gradient does not carry is found out over the obstacle.',
  source: { text: '14 CFR 25.111, 25.115, 25.119, 25.121', seen: true },
  needs: ['sheet', 'policy', 'library'],
  reads: ['only', 'verb', 'object', 'value', 'note', 'before'],
  messages: {
    short:
      'With {detent} the {segment} needs {least} % {kind} and has {worst} % at {weight} t{place}: {limit}{there}, and the procedure sets no such limit.',
    unmarked: '"{figure}" says neither gross nor net: between the two lie {reduction} %.',
  },
  examples: {
    bad: '{title: F18 take-off at QSTR, phases: [take-off], entry: {flaps: [F18]}, envelope: {detents: [F18], temperature: {from: -40, to: 25}}}',
    good: '{title: F18 take-off at QSTR, phases: [take-off], weightLimit: F18 at most 63.3 t, entry: {flaps: [F18]}, envelope: {detents: [F18], temperature: {from: -40, to: 25}}}',
  },
  run(context, report) {
    const { procedure, steps, sheet, policy, unasked } = context;
    const at = { step: '', field: 'weightLimit' };
    const tonnes = (kg: number): string => `${(kg / 1000).toFixed(1)} t`;
    /** A limit by the first question binds those that follow for the same detent: one mend is asked for at a time. */
    const bound = new Map<string, number>();
    for (const asked of askedClimbs(context)) {
      const key = `${asked.detent} ${asked.place?.code ?? ''}`;
      const heaviest = Math.min(asked.heaviest, asked.after ? (bound.get(key) ?? asked.heaviest) : asked.heaviest);
      const domain = climbDomain(procedure, sheet, { elevation: asked.place?.elevation ?? null, heaviest });
      if (domain === null) continue;
      const answer = gradientOver(sheet, asked.segment, asked.detent, asked.gross, domain);
      if (answer === null) unasked(`the sheet has no ${asked.name} speed for ${asked.detent}`, at);
      if (answer?.kind === 'undecided') unasked(answer.because, at);
      if (answer?.kind !== 'fails') continue;
      if (answer.limit !== null) bound.set(key, answer.limit);
      const shown = figures(asked, answer.worst, answer.there, policy.climb.netReduction);
      const { elevation = 0, temperature = 0, weight = 0 } = answer.at;
      const data = {
        detent: asked.detent,
        segment: asked.name,
        least: asked.least,
        kind: asked.net ? 'net' : 'gross',
        worst: shown.worst,
        weight: (weight / 1000).toFixed(1),
        place: asked.place === null ? '' : ` at ${asked.place.code}`,
        limit: answer.limit === null ? 'it holds at no weight' : `it holds up to ${tonnes(answer.limit)}`,
        there: shown.there,
      };
      const says = `${asked.detent}, ${tonnes(weight)}, ${formatNumber(elevation)} ft, ${formatNumber(temperature)} °C from standard: ${shown.worst} % against ${asked.least} %`;
      const witness = { kind: 'envelope', at: { ...answer.at, limit: answer.limit ?? 0 }, says } as const;
      const cause = `climb-gradient-short ${asked.name} ${key}`;
      report({ at, message: 'short', data, witness, cause, read: [asked.least, JSON.stringify(domain)] });
    }
    for (const { at: place, text, from, to } of unmarkedGradients(procedure, steps)) {
      const data = { figure: text.slice(from, to), reduction: policy.climb.netReduction };
      report({ at: place, message: 'unmarked', data, witness: wordsOf(place.field, text, from, to) });
    }
  },
});

/** Per cent with two places, in the kind that was asked for; gross with net beside it, as the net path is next. */
function figures(asked: Asked, worst: number, there: number | null, reduction: number) {
  const net = (value: number): string => (value - reduction).toFixed(2);
  if (asked.net) return { worst: net(worst), there: there === null ? '' : `, ${net(there)} % net there` };
  const obstacle = asked.obstacle === null ? '' : ` against ${asked.obstacle} % for the obstacle`;
  const also = asked.takeOff ? `, ${net(there ?? 0)} % net${obstacle}` : '';
  return { worst: worst.toFixed(2), there: there === null ? '' : `, ${there.toFixed(2)} % gross there${also}` };
}
