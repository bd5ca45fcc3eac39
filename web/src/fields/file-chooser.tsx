/** The box that a browser wants for choosing a file. It stands out of sight; a button beside it opens it through `chooser`. */
import type { RefObject } from 'react';

/** Our own files are YAML, of which JSON is a part; some mail programs call them text. */
export const RECORD_FILES = '.yaml,.yml,.json,.txt,text/*,application/json,application/yaml';

export function FileChooser({
  chooser,
  label,
  accept,
  take,
}: {
  readonly chooser: RefObject<HTMLInputElement | null>;
  readonly label: string;
  readonly accept: string;
  readonly take: (file: File) => void;
}) {
  return (
    <input
      ref={chooser}
      type="file"
      hidden
      aria-label={label}
      accept={accept}
      onChange={(event) => {
        const [file] = event.target.files ?? [];
        // The same file may be chosen again, once it was put right.
        event.target.value = '';
        if (file !== undefined) take(file);
      }}
    />
  );
}
