import { inForce } from '../../../lib/server/reading.ts';
import { shown, signedIn } from '../../_ui/arrive.ts';
import { Empty } from '../../_ui/notice.tsx';
import { ReadTop } from '../read-top.tsx';
import { InForce } from './in-force.tsx';

export default async function Page({ params }: { params: Promise<{ tail: string }> }) {
  const registration = decodeURIComponent((await params).tail);
  const { tail, asOf, lines } = shown(await inForce(await signedIn(`/read/${registration}`), registration));
  return (
    <main>
      <ReadTop
        title={tail.registration}
        back={{ href: '/read', words: 'Tails' }}
        line={`${tail.type}, standard ${tail.standard}`}
        asOf={asOf}
      />
      {lines.length === 0 && (
        <Empty title="Nothing is in force for this tail">
          <p>Nothing signed covers its standard now. Do not fly from another tail’s text; ask the fleet office.</p>
        </Empty>
      )}
      <InForce lines={lines} registration={tail.registration} />
    </main>
  );
}
