/** The ways to look at one place, as leaves at its head. */
import { Link } from 'wouter';

export const PLACE_VIEWS = [
  { view: '', label: 'Sheet' },
  { view: 'pipes', label: 'Pipes' },
  { view: 'choice', label: 'Choice' },
  { view: 'beat', label: 'Beat' },
  { view: 'history', label: 'History' },
] as const;

export function PlaceTabs({ id, view }: { readonly id: string; readonly view: string }) {
  return (
    <nav className="place-tabs no-print" aria-label="Views of this place">
      {PLACE_VIEWS.map((leaf) => (
        <Link
          key={leaf.view}
          href={leaf.view === '' ? `/places/${id}` : `/places/${id}/${leaf.view}`}
          aria-current={leaf.view === view ? 'page' : undefined}
        >
          {leaf.label}
        </Link>
      ))}
    </nav>
  );
}
