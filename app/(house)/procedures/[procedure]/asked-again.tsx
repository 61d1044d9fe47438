import type { AskedAgain } from '../../../../lib/server/asked-again.ts';
import { Section } from '../../../_ui/page-head.tsx';

/** What the clock asks of the issue in force. */
export function AskedAgainList({ asked }: { asked: AskedAgain }) {
  const { issueNumber, findings, notChecked } = asked;
  return (
    <Section title={`Asked again of issue ${issueNumber}`}>
      {findings.length === 0 && <p>Every answer and waiver that it was signed with still stands.</p>}
      {findings.map((finding) => (
        <p key={finding.read}>
          <b>{finding.severity}</b> {finding.message}
        </p>
      ))}
      {notChecked.map((one) => (
        <p key={one.check} className="small">
          Not checked: {one.check.replaceAll('-', ' ')}, because {one.because}.
        </p>
      ))}
    </Section>
  );
}
