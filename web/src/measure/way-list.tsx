/** The ways to measure, to choose one from. */
export function WayList<Way extends string>({
  name,
  ways,
  words,
  choose,
}: {
  readonly name: string;
  readonly ways: readonly Way[];
  readonly words: Readonly<Record<Way, { readonly name: string; readonly suits: string }>>;
  readonly choose: (way: Way) => void;
}) {
  return (
    <ul className="ways" aria-label={name}>
      {ways.map((way) => (
        <li key={way}>
          <button type="button" onClick={() => choose(way)}>
            <strong>{words[way].name}</strong>
            <span>{words[way].suits}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
