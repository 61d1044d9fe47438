import type { ReactNode } from 'react';
import type { Aerodrome, Callout, Checklist, Source, TermEntry } from '../../../lib/library/library.ts';
import type { Kind, LibraryLine } from '../../../lib/server/library.ts';
import { Section } from '../../_ui/page-head.tsx';
import { When } from '../../_ui/when.tsx';
import { AerodromeCard } from './aerodrome-card.tsx';
import css from './library.module.css';

const TITLES: Readonly<Record<Kind, string>> = {
  aerodrome: 'Aerodromes',
  callout: 'Callouts',
  term: 'Terms',
  checklist: 'Checklists',
  source: 'Sources',
};
const NONE: Readonly<Record<Kind, string>> = {
  aerodrome: 'No aerodrome card yet. Without one no figure of a place can be checked.',
  callout: 'No callout yet. Until there are some, a call is checked against the words of the policy alone.',
  term: 'No term yet.',
  checklist: 'No checklist yet.',
  source: 'No source yet.',
};

/** One kind of entry. `searched`: an empty list then means that nothing fits. */
export function Entries({ kind, lines, searched }: { kind: Kind; lines: readonly LibraryLine[]; searched: boolean }) {
  if (lines.length === 0 && searched) return null;
  return (
    <Section title={`${TITLES[kind]}${lines.length > 0 ? `, ${lines.length}` : ''}`}>
      {lines.length === 0 && <p className="small">{NONE[kind]}</p>}
      <ul className={css.entries}>
        {lines.map((line) => (
          <li key={line.key}>
            {entry(line)}
            <p className="small">
              version {line.version}, {line.madeBy}, <When at={line.madeAt} />
            </p>
          </li>
        ))}
      </ul>
    </Section>
  );
}

function entry({ kind, content }: LibraryLine): ReactNode {
  switch (kind) {
    case 'aerodrome':
      return <AerodromeCard card={content as Aerodrome} />;
    case 'callout':
      return <CalloutEntry callout={content as Callout} />;
    case 'term':
      return <Term entry={content as TermEntry} />;
    case 'checklist':
      return <List list={content as Checklist} />;
    case 'source':
      return <SourceEntry source={content as Source} />;
  }
}

function CalloutEntry({ callout }: { callout: Callout }) {
  const reply = callout.reply ? `“${callout.reply}”` : callout.replyAct;
  return (
    <>
      <h3>“{callout.words}”</h3>
      <p>
        {callout.by}, {callout.trigger}. {reply ? `${callout.replyBy}: ${reply}.` : `No reply: ${callout.silent}`}
      </p>
      <p>{callout.purpose}</p>
    </>
  );
}

function Term({ entry: { term, meaning, allowed, forbidden } }: { entry: TermEntry }) {
  return (
    <>
      <h3>{term}</h3>
      <p>{meaning}</p>
      {allowed.length > 0 && <p>Also written: {allowed.join(', ')}.</p>}
      {forbidden.length > 0 && <p>Never written: {forbidden.join(', ')}.</p>}
    </>
  );
}

function List({ list }: { list: Checklist }) {
  return (
    <>
      <h3>{list.title}</h3>
      <p>
        {list.trigger}. {list.calledBy} calls, {list.readBy} reads; {list.method.replaceAll('-', ' ')}.
      </p>
      <ol className={css.items}>
        {list.items.map((item) => (
          <li key={item.challenge}>
            <span>{item.challenge}</span> <b>{item.response}</b> <span className="small">{item.by}</span>
          </li>
        ))}
      </ol>
      <p>“{list.complete}”</p>
    </>
  );
}

function SourceEntry({ source }: { source: Source }) {
  return (
    <>
      <h3>{source.title}</h3>
      <p>
        {[source.publisher, source.revision, source.date].filter(Boolean).join(', ')};{' '}
        {source.seen ? 'seen' : 'from memory'}; {source.status}.
      </p>
    </>
  );
}
