/** A group of boxes that can be folded away. It opens when the file says something of it, and never shuts under the hands. */
import { useEffect, useState } from 'react';
import { useMedia } from '../alternatives/use-media.ts';

/** There is room for all of them at a desk. */
const WIDE = '(min-width: 1101px)';

export function Group({
  title,
  isUsed,
  children,
}: {
  readonly title: string;
  readonly isUsed: boolean;
  readonly children: React.ReactNode;
}) {
  const isWide = useMedia(WIDE);
  const [isOpen, setOpen] = useState(isUsed || isWide);
  useEffect(() => {
    if (isUsed || isWide) setOpen(true);
  }, [isUsed, isWide]);
  return (
    <details
      className="more need-group"
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{title}</summary>
      {children}
    </details>
  );
}
