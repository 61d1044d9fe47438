import { parseDocument } from 'yaml';
import {
  kindWords,
  needWords,
  phaseWords,
  readWords,
  SEVERITY_WORDS,
  sourceWords,
} from '../../../../lib/check/manual.ts';
import type { Rule } from '../../../../lib/check/rule.ts';
import { Section } from '../../../_ui/page-head.tsx';
import css from '../checks.module.css';

export function Manual({ rule }: { rule: Rule }) {
  const facts = [
    ['Severity', `${rule.severity}: ${SEVERITY_WORDS[rule.severity]}`],
    ['Asks', kindWords(rule.kind)],
    ['From', rule.kind.includes('S') ? 'where the procedure is flown, under Fly it' : rule.stage],
    ['Phases', phaseWords(rule)],
    ['Needs', needWords(rule)],
    ['Reads', readWords(rule)],
    ['Version', String(rule.version ?? 1)],
  ] as const;
  return (
    <>
      <p className={css.says}>{rule.says}</p>
      <dl className={css.facts}>
        {facts.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      <Section title="Why">
        <p className={css.words}>{rule.why}</p>
        <p className="small">Source: {sourceWords(rule)}</p>
      </Section>
      <Section title="What it says">
        <ul className={css.messages}>
          {Object.values<string>(rule.messages).map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      </Section>
      <Section title="Found in">
        <Example text={rule.examples.bad} />
      </Section>
      <Section title="Not found in">
        <Example text={rule.examples.good} />
      </Section>
    </>
  );
}

/** As a procedure file would hold it; the tests run it. */
const Example = ({ text }: { text: string }) => (
  <pre className={`gate ${css.example}`}>
    {parseDocument(text).toString({ collectionStyle: 'block', lineWidth: 90 }).trim()}
  </pre>
);
