import Link from 'next/link';
import type { ComponentProps } from 'react';
import css from './button.module.css';

type Look = 'quiet' | 'main' | 'grave' | 'plain';
const look = (kind: Look, more?: string) =>
  [css.button, kind === 'quiet' ? '' : css[kind], more].filter(Boolean).join(' ');

export function Button({
  look: kind = 'quiet',
  className,
  type = 'button',
  ...rest
}: ComponentProps<'button'> & { look?: Look }) {
  return <button type={type} className={look(kind, className)} {...rest} />;
}

export function LinkButton({
  look: kind = 'quiet',
  className,
  ...rest
}: ComponentProps<typeof Link> & { look?: Look }) {
  return <Link className={look(kind, className)} {...rest} />;
}
