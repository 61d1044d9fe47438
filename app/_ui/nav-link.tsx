'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';

export function NavLink({ href, children }: { href: string; children: string }) {
  const path = usePathname();
  const here = path === href || path.startsWith(`${href}/`);
  return (
    <Link href={href} aria-current={here ? 'page' : undefined}>
      {children}
    </Link>
  );
}
