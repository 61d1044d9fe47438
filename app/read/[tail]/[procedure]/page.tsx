import { readIssue } from '../../../../lib/server/reading.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { sayTime } from '../../../_ui/when.tsx';
import { ReadTop } from '../../read-top.tsx';
import { Pages } from './pages.tsx';

export default async function Page({ params }: { params: Promise<{ tail: string; procedure: string }> }) {
  const { tail: raw, procedure } = await params;
  const tail = decodeURIComponent(raw);
  const issue = shown(await readIssue(await signedIn(`/read/${tail}/${procedure}`), tail, procedure));
  const standard = issue.tail?.standard ? `standard ${issue.tail.standard}` : '';
  return (
    <main>
      <ReadTop
        title={issue.procedure.title}
        back={{ href: `/read/${tail}`, words: tail }}
        line={[standard, `issue ${issue.issueNumber} in force since ${sayTime(issue.inForceFrom)}`]
          .filter(Boolean)
          .join(' · ')}
        asOf={issue.asOf}
      />
      <Pages issue={issue} tail={tail} />
    </main>
  );
}
