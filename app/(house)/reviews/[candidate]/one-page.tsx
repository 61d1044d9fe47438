import { MEANINGS, type Meaning } from '../../../../lib/diff/change.ts';
import type { OpenCandidate } from '../../../../lib/server/reviews.ts';
import { sayTime } from '../../../_ui/when.tsx';
import css from './review.module.css';

const WORDS: Record<Meaning, [one: string, many: string]> = {
  order: ['change of order', 'changes of order'],
  who: ['change of who acts', 'changes of who acts'],
  cue: ['changed cue', 'changed cues'],
  value: ['changed action or value', 'changed actions or values'],
  modes: ['change of expected modes', 'changes of expected modes'],
  words: ['changed wording', 'changed wordings'],
  verification: ['changed verification', 'changed verifications'],
  state: ['change of scope or state', 'changes of scope or state'],
  notice: ['changed notice or note', 'changed notices or notes'],
  background: ['change in the background', 'changes in the background'],
};

/** What a standards captain asks before the text is read. */
export function OnePage({ open }: { open: OpenCandidate }) {
  return (
    <dl className={css.one}>
      <Fact name="Why" said={open.change.reason} />
      <Fact name="Source" said={open.change.source || 'none given'} />
      <Fact name="Risk, as the drafter sees it" said={open.change.riskNote || 'not written'} />
      <Fact name="What kind of change" said={kinds(open)} />
      <Fact name="Written by" said={open.editors.join(', ') || 'nobody'} />
      <Fact name="Note to the reviewer" said={open.note || 'none'} />
    </dl>
  );
}

function Fact({ name, said }: { name: string; said: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{said}</dd>
    </div>
  );
}

function kinds({ changes, base }: OpenCandidate): string {
  if (!base) return 'a first issue: every step is new';
  const counts = new Map<Meaning, number>();
  for (const change of changes) {
    const meaning = 'meaning' in change ? change.meaning : 'order';
    counts.set(meaning, (counts.get(meaning) ?? 0) + 1);
  }
  const said = MEANINGS.filter((meaning) => counts.has(meaning)).map((meaning) => {
    const n = counts.get(meaning)!;
    return `${n} ${WORDS[meaning][n === 1 ? 0 : 1]}`;
  });
  return said.join(', ') || 'none';
}

/** Which candidate this is, against what, from whom. */
export function lineOf({ number, base, submittedBy, submittedAt }: OpenCandidate): string {
  const against = base ? `against issue ${base.number}` : 'first issue';
  return `Candidate ${number}, ${against} · submitted by ${submittedBy}, ${sayTime(submittedAt)}`;
}
