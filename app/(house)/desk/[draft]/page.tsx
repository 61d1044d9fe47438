import { openDraft } from '../../../../lib/server/drafts.ts';
import { welcome } from '../../../../lib/server/welcome.ts';
import { shown, signedIn } from '../../../_ui/arrive.ts';
import { Editor } from './editor.tsx';

export default async function Page({ params }: { params: Promise<{ draft: string }> }) {
  const { draft } = await params;
  const viewer = await signedIn(`/desk/${draft}`);
  const open = shown(await openDraft(viewer, draft));
  const { name } = shown(await welcome(viewer));
  const initials = name
    .split(/\s+/)
    .map((word) => word[0] ?? '')
    .join('')
    .slice(0, 2);
  return <Editor open={open} me={{ id: viewer.personId, name, initials }} />;
}
