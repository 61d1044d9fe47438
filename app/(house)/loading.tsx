import { Main } from '../_ui/shell.tsx';

export default function Loading() {
  return (
    <Main>
      <p role="status">One moment …</p>
    </Main>
  );
}
