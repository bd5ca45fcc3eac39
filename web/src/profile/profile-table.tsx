/** The points of a line in a table: the same points as in the drawing. The ends are fixed; they follow the fall and the lift. */
import { lazy, Suspense, useEffect, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import { useFileDrop } from '../walk/use-file-drop.ts';
import type { PointPlace } from './line-points.ts';
import { hasProfile } from './line-points.ts';

/** Folded away on most places, so it comes when the fold is opened. */
const ProfileBody = lazy(() =>
  import('./profile-body.tsx').then((leaf) => ({ default: leaf.ProfileBody })),
);

/** Judgement: a table of up to a dozen points is open where there is one; a longer one would push the page away. */
const MOST_OPEN = 12;

export function ProfileTable({
  line,
  asked,
}: {
  readonly line: LineName;
  /** A point of the drawing that its boxes are asked for. */
  readonly asked: PointPlace | undefined;
}) {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const count = pipesOf(document, line).reduce(
    (sum, { profile }) => sum + (Array.isArray(profile) ? profile.length : 0),
    0,
  );
  const [isOpen, setOpen] = useState(count > 0 && count <= MOST_OPEN);
  const [toFocus, setToFocus] = useState<PointPlace>();
  const [walk, setWalk] = useState<File>();
  const { isOver, ...drop } = useFileDrop((file) => {
    setOpen(true);
    setWalk(file);
  });

  useEffect(() => {
    if (asked?.line !== line) return;
    setOpen(true);
    setToFocus(asked);
  }, [asked, line]);

  return (
    <details
      className={isOver ? 'more profile is-over' : 'more profile'}
      open={isOpen}
      {...drop}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {hasProfile(document, line)
          ? `Profile, ${pointsCounted(count)}`
          : 'Profile, by hand or from a file'}
      </summary>
      {isOpen && (
        <Suspense fallback={null}>
          <ProfileBody {...{ line, toFocus, setToFocus, walk, setWalk }} />
        </Suspense>
      )}
    </details>
  );
}

const pointsCounted = (count: number): string => (count === 1 ? '1 point' : `${count} points`);
