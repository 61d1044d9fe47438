import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { checkNamed } from '../../../../lib/check/manual.ts';
import { signedIn } from '../../../_ui/arrive.ts';
import { PageHead } from '../../../_ui/page-head.tsx';
import { Main } from '../../../_ui/shell.tsx';
import { Manual } from './manual.tsx';

type Props = { params: Promise<{ id: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: checkNamed((await params).id)?.title ?? 'Check' };
}

/** The manual page of one check, rendered from the check itself. */
export default async function Page({ params }: Props) {
  const { id } = await params;
  await signedIn(`/checks/${id}`);
  const rule = checkNamed(id);
  if (rule === null) notFound();
  return (
    <Main>
      <PageHead label={`Check ${rule.number} · ${rule.id}`} title={rule.title} />
      <Manual rule={rule} />
    </Main>
  );
}
