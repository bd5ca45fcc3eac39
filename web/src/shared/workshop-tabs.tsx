/** The leaves of the workshop: its places, its range of rams, its price list, its bench. */
import { Link } from 'wouter';

const LEAVES = [
  { leaf: 'places', href: '/', label: 'Places' },
  { leaf: 'range', href: '/range', label: 'Range' },
  { leaf: 'prices', href: '/prices', label: 'Prices' },
  { leaf: 'bench', href: '/bench', label: 'Bench' },
] as const;

export function WorkshopTabs({ leaf }: { readonly leaf: (typeof LEAVES)[number]['leaf'] }) {
  return (
    <nav className="place-tabs workshop-tabs no-print" aria-label="Leaves of the workshop">
      {LEAVES.map((one) => (
        <Link key={one.leaf} href={one.href} aria-current={one.leaf === leaf ? 'page' : undefined}>
          {one.label}
        </Link>
      ))}
    </nav>
  );
}
