/** One place in the list. */
import { isRunning } from '@fallwright/papers';
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import type { Glance } from '../answer/glance.ts';
import { verdictWord } from '../answer/words.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import { textOf } from '../state/entry.ts';
import { hasReadings } from '../state/measured-entry.ts';
import type { SiteRecord } from '../state/site-record.ts';
import { nameOf } from '../state/workshop.ts';
import { glanceInWords } from './glance-words.ts';
import { askedText } from './glances.ts';
import { Thumb } from './thumb.tsx';
import type { Box } from './thumbnails.ts';
import { dayInWords } from './when.ts';
import type { Acts } from './workshop-acts.tsx';

export function PlaceRow({
  site,
  box,
  acts,
}: {
  readonly site: SiteRecord;
  readonly box: Box;
  readonly acts: Acts;
}) {
  const { workshop } = useNotebook();
  const [isNaming, setNaming] = useState(false);
  const name = nameOf(site) || 'A place without a name';
  const about = ['owner', 'place']
    .map((key) => textOf(site.document[key]))
    .filter((part) => part !== '')
    .join(', ');
  return (
    <li>
      <Link href={`/places/${site.id}`} className="th" aria-hidden="true" tabIndex={-1}>
        <Thumb document={site.document} box={box} />
      </Link>
      <div className="who">
        {isNaming ? (
          <Naming site={site} acts={acts} done={() => setNaming(false)} />
        ) : (
          <h2>
            <Link href={`/places/${site.id}`}>{name}</Link>
            {site.isDemo && <span className="tag">Demo</span>}
          </h2>
        )}
        {about !== '' && <p>{about}</p>}
        <p className="note">{needsInWords(site)}</p>
        <p className="note">changed {dayInWords(site.savedAt)}</p>
      </div>
      <AtAGlance site={site} />
      <div className="row acts">
        <button type="button" className="button plain" onClick={() => setNaming(true)}>
          Rename<span className="for-ears"> {name}</span>
        </button>
        <button
          type="button"
          className="button plain"
          onClick={() => acts.act(workshop.duplicate(site.id), `${name} was copied.`)}
        >
          Copy<span className="for-ears"> {name}</span>
        </button>
        <button
          type="button"
          className="button plain"
          onClick={() => acts.act(workshop.takeOut([site.id]), `${name} was deleted.`, [site.id])}
        >
          Delete<span className="for-ears"> {name}</span>
        </button>
      </div>
    </li>
  );
}

/** The verdict and the water; an empty place until it is worked out, so that nothing jumps. */
function AtAGlance({ site }: { readonly site: SiteRecord }) {
  const { glances, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const text = useMemo(() => askedText(site.document), [site.document]);
  const glance = useStore(glances.known, (known) => known.get(text));
  if (glance === undefined) return <div className="glance" />;
  const { main, note } = glanceInWords(glance, system);
  return (
    <div className="glance">
      <VerdictMark kind={glance.kind} width={44} />
      <p>
        <span className={wordTone(glance.kind)}>
          {isDelivering(glance) && <span className="for-ears">{verdictWord(glance.kind)}: </span>}
          {main}
        </span>
        <span className="note">{note}</span>
      </p>
    </div>
  );
}

const isDelivering = (glance: Glance): glance is Exclude<Glance, { kind: 'notEnoughYet' }> =>
  glance.kind !== 'notEnoughYet' && isRunning(glance.kind);

/** `1.9 m ± 0.1 m fall, 12 m lift`, as written. */
function needsInWords({ document }: SiteRecord): string {
  const parts = (['fall', 'lift'] as const).map((key) => {
    const written = textOf(document[key]);
    if (written === '' && hasReadings(document, key)) return `${key} by readings`;
    return written === '' ? `no ${key} yet` : `${written} ${key}`;
  });
  return parts.join(', ');
}

function Naming({
  site,
  acts,
  done,
}: {
  readonly site: SiteRecord;
  readonly acts: Acts;
  readonly done: () => void;
}) {
  const { workshop } = useNotebook();
  const [name, setName] = useState(nameOf(site));
  const keep = (): void => {
    if (name.trim() !== nameOf(site)) {
      acts.act(workshop.rename(site.id, name), `Now called ${name.trim() || 'nothing'}.`);
    }
    done();
  };
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <input
        type="text"
        aria-label={`New name of ${nameOf(site) || 'this place'}`}
        autoComplete="off"
        spellCheck={false}
        // The person has just asked to write here.
        ref={(box) => box?.focus()}
        value={name}
        onChange={(event) => setName(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => {
          if (event.key === 'Escape') done();
        }}
      />
    </form>
  );
}
