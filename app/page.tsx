import { redirect } from 'next/navigation';
import { welcome } from '../lib/server/welcome.ts';
import { shown, signedIn } from './_ui/arrive.ts';

/** Everyone starts where their work is. */
export default async function Page() {
  const { may } = shown(await welcome(await signedIn('/')));
  if (may.write || may.review || may.sign) redirect('/desk');
  if (may.readRecord) redirect('/record');
  if (may.managePeople) redirect('/people');
  redirect('/read');
}
