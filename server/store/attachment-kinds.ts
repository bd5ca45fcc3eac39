/** What may be attached: photos, recordings and papers, known by their first bytes and never by what a name or a browser says. */

/** Bytes that are looked at. */
export const BYTES_LOOKED_AT = 16;

interface Mark {
  readonly at: number;
  readonly bytes: string;
}

/** Each type with the bytes that a file of it has, written as letters and `\x` codes. */
const KINDS: readonly { readonly type: string; readonly marks: readonly Mark[] }[] = [
  // Source: W3C PNG (third edition) §5.2; the other marks: memory.
  { type: 'image/png', marks: [{ at: 0, bytes: '\x89PNG\r\n\x1a\n' }] },
  { type: 'image/jpeg', marks: [{ at: 0, bytes: '\xff\xd8\xff' }] },
  { type: 'image/webp', marks: riff('WEBP') },
  { type: 'image/heic', marks: brand('heic') },
  { type: 'image/heic', marks: brand('heix') },
  { type: 'image/heif', marks: brand('mif1') },
  { type: 'audio/wav', marks: riff('WAVE') },
  { type: 'audio/mp4', marks: brand('M4A ') },
  { type: 'audio/ogg', marks: [{ at: 0, bytes: 'OggS' }] },
  { type: 'audio/webm', marks: [{ at: 0, bytes: '\x1a\x45\xdf\xa3' }] },
  { type: 'application/pdf', marks: [{ at: 0, bytes: '%PDF-' }] },
];

export const ATTACHMENT_TYPES = [...new Set(KINDS.map(({ type }) => type))];

/** Undefined when the bytes are none of a kind that may be attached. */
export function attachmentType(first: Uint8Array): string | undefined {
  const letters = Buffer.from(first.subarray(0, BYTES_LOOKED_AT)).toString('latin1');
  return KINDS.find(({ marks }) => marks.every(({ at, bytes }) => letters.startsWith(bytes, at)))
    ?.type;
}

function riff(form: string): readonly Mark[] {
  return [
    { at: 0, bytes: 'RIFF' },
    { at: 8, bytes: form },
  ];
}

function brand(name: string): readonly Mark[] {
  return [{ at: 4, bytes: `ftyp${name}` }];
}
