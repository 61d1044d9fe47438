import { LinkButton } from './_ui/button.tsx';
import { QuietPage } from './_ui/quiet-page.tsx';

export default function Forbidden() {
  return (
    <QuietPage title="This page is not part of your role">
      <p>Nothing was changed. An administrator of your operator can change roles.</p>
      <div>
        <LinkButton look="main" href="/">
          To the start
        </LinkButton>
      </div>
    </QuietPage>
  );
}
