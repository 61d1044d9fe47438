import { cardsOf } from '../cards.ts';
import { defineRule } from '../rule.ts';
import { codesIn, fits, forWetRunway, isWetRunway } from '../runway-state.ts';
import { namedSpeeds } from '../speed-text.ts';
import { statedIn } from '../stated.ts';
import { TEXT_FIELDS, textsOf } from '../texts.ts';
import { absent, wordsOf } from '../witness.ts';

/** What the distance assumes, by the words with which it is stated. */
const ASSUMPTIONS = [
  ['reverse credit', /\breverse\b[^.;]*\bcredit|\bcredit\b[^.;]*\breverse\b|\b(with|without|no|max(imum)?) reverse\b/i],
  [
    'tail wind limit',
    /\b(distance|calculation|assum\w+)\b[^.;]*\btail[- ]?wind\b|\btail[- ]?wind\b[^.;]*\b(distance|calculation|assum\w+)\b/i,
  ],
] as const;

export const wetAndContaminated = defineRule({
  id: 'wet-and-contaminated',
  number: 59,
  severity: 'STOP',
  kind: 'T/N',
  stage: 'writing',
  phases: ['take-off', 'approach', 'landing'],
  title: 'Wet and contaminated runways',
  says: "A branch for the runway's state goes by the reported condition code; V1, autobrake, crosswind and tail wind are those of that state in the sheet; reverse credit and tail wind of the landing distance are stated.",
  why: 'The crew did not know that their stopping margin took credit for reverse and capped the tail wind.',
  source: { text: 'NTSB AAR-07/06; global reporting format', seen: true },
  needs: ['sheet', 'library'],
  reads: TEXT_FIELDS,
  messages: {
    code: '"{words}" names no reported condition code: every crew draws its own line between wet and slippery.',
    setting:
      '{quantity} {value} does not fit code {code}, for which the sheet gives {wanted}: the distance is not met.',
    v1: '"{words}" is the speed for a dry runway; this step is for a wet one: V1 wet is lower.',
    assumption: 'The landing distance says nothing of the {what}: its margin is not known to the crew.',
  },
  examples: {
    bad: '{phases: [landing], title: Landing on a wet runway, entry: {flaps: [F35]}}',
    good: '{phases: [landing], title: Landing with code 5, entry: {flaps: [F35], also: landing distance takes no reverse credit and a tail wind of at most 10 kt}}',
  },
  run({ procedure, steps, sheet, library }, report) {
    const wet = forWetRunway(procedure, cardsOf(library, procedure));
    const own = codesIn(`${procedure.title} ${procedure.effectivity.note} ${procedure.entry.also}`);
    const conditions = [
      ...steps.map((step) => ({ at: { step: step.id as string, field: 'only' }, text: step.only })),
      ...procedure.branches.map(({ id, when }) => ({ at: { step: '', field: `branch.${id}.when` }, text: when })),
    ];
    for (const { at, text } of conditions) {
      if (!isWetRunway(text) || codesIn(text) !== null) continue;
      report({ at, message: 'code', data: { words: text }, witness: wordsOf(at.field, text) });
    }
    for (const stated of statedIn(procedure, steps)) {
      const codes = codesIn(stated.condition) ?? own;
      if (codes === null) continue;
      const rows = sheet.runwayStates.filter(({ code }) => code >= codes.from && code <= codes.to);
      const wrong = rows.find((row) => !fits(stated, row));
      if (wrong === undefined) continue;
      const { quantity, value, at, from, quote } = stated;
      const wanted = String(
        wrong[quantity === 'autobrake' ? 'autobrake' : quantity.startsWith('tail') ? 'tailwind' : 'crosswind'],
      );
      const data = { quantity, value, code: wrong.code, wanted };
      const witness = { kind: 'text', field: at.field, span: { from, to: from + quote.length }, quote } as const;
      report({ at, message: 'setting', data, witness, read: [wanted] });
    }
    for (const step of steps) {
      if (!isWetRunway(step.only) && !(wet && procedure.phases.includes('take-off'))) continue;
      for (const field of ['cue', 'value', 'checkSees'] as const) {
        const v1 = namedSpeeds(step[field]).find(
          ({ name, to }) => name === 'V1' && !/^ wet\b/.test(step[field].slice(to)),
        );
        if (v1 === undefined || field === 'cue' || !/\bdry\b/i.test(step[field])) continue;
        const at = { step: step.id as string, field };
        const witness = wordsOf(field, step[field]);
        report({ at, message: 'v1', data: { words: step[field] }, witness });
      }
    }
    if (!wet || !procedure.phases.includes('landing')) return;
    const all = textsOf(procedure, steps).map(({ text }) => text);
    for (const [what, said] of ASSUMPTIONS) {
      if (all.some((text) => said.test(text))) continue;
      const at = { step: '', field: 'entry.also' };
      report({ at, message: 'assumption', data: { what }, witness: absent('entry.also'), severity: 'ANSWER' });
    }
  },
});
