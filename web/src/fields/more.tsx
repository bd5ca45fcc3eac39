/** Questions that most people can leave: folded away, open when the file answers one of them. */
export function More({
  summary,
  isUsed,
  children,
}: {
  readonly summary: string;
  readonly isUsed: boolean;
  readonly children: React.ReactNode;
}) {
  return (
    <details className="more" open={isUsed || undefined}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
