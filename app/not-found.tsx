import { LinkButton } from './_ui/button.tsx';
import { QuietPage } from './_ui/quiet-page.tsx';

export default function NotFound() {
  return (
    <QuietPage title="There is nothing by that address for you here">
      <p>Nothing was changed. The link may be old, or what it names may belong to someone else.</p>
      <div>
        <LinkButton look="main" href="/">
          To the start
        </LinkButton>
      </div>
    </QuietPage>
  );
}
