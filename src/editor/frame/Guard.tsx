import { FolderOpen, RotateCw, Save } from 'lucide-react';
import { Component, type ReactNode, Suspense } from 'react';
import { Button } from '../control/Button.tsx';
import { PartMissing } from '../control/lazyPart.tsx';
import { saveFile } from '../kept/file.ts';
import { openingFailed } from '../kept/opening.ts';
import { putAway } from '../state/commit.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { leaveSaw } from '../state/route.ts';
import { useWords } from '../words/t.ts';

interface CatchProps {
  /** What is shown is tried again when this changes. */
  readonly of: unknown;
  readonly onCaught: (error: unknown) => void;
  readonly instead: (error: unknown, again: () => void) => ReactNode;
  readonly children: ReactNode;
}

/** Keeps a throw while rendering to the part of the page where it happened. */
class Catch extends Component<CatchProps, { readonly caught: { readonly error: unknown } | null }> {
  override state: { readonly caught: { readonly error: unknown } | null } = { caught: null };

  static getDerivedStateFromError(error: unknown) {
    return { caught: { error } };
  }

  override componentDidCatch(error: unknown) {
    this.props.onCaught(error);
  }

  override componentDidUpdate(before: CatchProps) {
    if (this.state.caught && before.of !== this.props.of) this.setState({ caught: null });
  }

  override render() {
    const { caught } = this.state;
    if (!caught) return this.props.children;
    return this.props.instead(caught.error, () => this.setState({ caught: null }));
  }
}

interface GuardProps {
  readonly children: ReactNode;
  /** Stands there until the file of what is shown has come. */
  readonly meanwhile?: ReactNode;
  /** For what is asked for and can be done without: nothing is shown in its place, and whoever asked is told. */
  readonly onLost?: (() => void) | undefined;
}

/**
 * Around a part of the page: where it cannot be shown, what to do stands in its place, the rest of the page works on
 * and nothing of the design is lost. An undo or another edit tries it again.
 */
export function Guard({ children, meanwhile = null, onLost }: GuardProps) {
  const design = useEditor((s) => s.edit.design);
  const id = useEditor((s) => s.designId);
  return (
    <Catch
      of={design}
      onCaught={(error) => {
        if (id !== null && !(error instanceof PartMissing)) openingFailed(id);
        onLost?.();
      }}
      instead={(error, again) => (onLost ? null : <Broken error={error} again={again} />)}
    >
      <Suspense fallback={meanwhile}>{children}</Suspense>
    </Catch>
  );
}

/** What stands where a part of the page could not be shown. */
function Broken({ error, again }: { error: unknown; again: () => void }) {
  const t = useWords();
  const store = useStore();
  const chosen = useEditor((s) => s.designId !== null);
  const missing = error instanceof PartMissing;
  const retry = () => {
    if (missing) error.renew();
    again();
  };
  return (
    <div className="broken" role="alert">
      <p className="broken-what">{t(missing ? 'broken.missing' : 'broken.part')}</p>
      <p className="note">{error instanceof Error ? error.message : String(error)}</p>
      <div className="btn-row">
        <Button icon={RotateCw} onClick={retry}>
          {t('plan.retry')}
        </Button>
        {missing ? <Button onClick={() => location.reload()}>{t('offline.reload')}</Button> : null}
        {chosen ? (
          <>
            <Button icon={Save} onClick={() => void saveFile(store)}>
              {t('file.save')}
            </Button>
            <Button
              icon={FolderOpen}
              onClick={() => {
                putAway(store);
                leaveSaw();
              }}
            >
              {t('file.other')}
            </Button>
          </>
        ) : null}
      </div>
    </div>
  );
}
