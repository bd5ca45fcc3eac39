/** What every field has: its name, its box, the line under it, and a fault that takes that line's place. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { Path } from '../state/site-document.ts';
import { pathText } from '../state/site-document.ts';
import { fieldId } from './field-ids.ts';

export interface BoxAttributes {
  readonly id: string;
  readonly 'aria-invalid': boolean;
  readonly 'aria-describedby': string;
}

export function FieldFrame({
  path,
  label,
  isInside,
  isOptional,
  fault,
  kept,
  reading,
  aside,
  after,
  children,
}: {
  readonly path: Path;
  readonly label: string;
  /** While the person writes in the box nothing is held against it. */
  readonly isInside: boolean;
  readonly isOptional: boolean;
  /** The box's own fault, told since it was left. */
  readonly fault?: string | undefined;
  /** The last good text that the answer still stands on. */
  readonly kept?: string | undefined;
  readonly reading?: React.ReactNode;
  /** A control at the end of the reading line. */
  readonly aside?: React.ReactNode;
  readonly after?: React.ReactNode;
  readonly children: (attributes: BoxAttributes) => React.ReactNode;
}) {
  const { answer } = useNotebook();
  const key = pathText(path);
  const problem = useStore(answer, (state) =>
    state.problems.find((one) => one.kind !== 'missing' && isAbout(one.field, key)),
  );
  const told = fault ?? (isInside ? undefined : problem?.message);
  const id = fieldId(path);
  return (
    <div className={told === undefined ? 'field' : 'field wrong'}>
      <label htmlFor={id}>
        {label}
        {isOptional && <span className="may-wait"> if known</span>}
      </label>
      {children({
        id,
        'aria-invalid': told !== undefined,
        'aria-describedby': `${id}-reading`,
      })}
      <div className="reading">
        <div id={`${id}-reading`}>
          {told === undefined ? (
            reading
          ) : (
            <>
              <p className="fault">{told}</p>
              {kept !== undefined && <p className="kept">The answer still stands on {kept}.</p>}
            </>
          )}
        </div>
        {told === undefined && aside}
      </div>
      {after}
    </div>
  );
}

/** A problem of a box, or of something inside what the box holds: an entry of a list, the value of a map. */
function isAbout(field: string, key: string): boolean {
  return field === key || field.startsWith(`${key}[`) || field.startsWith(`${key}.`);
}
